import { describe, expect, it } from 'vitest';
import { printerWords } from '../../src/settle/printer.ts';
import { even, laid, sheetsIn, wordsOf } from './laid.ts';
import { MIDDLING } from './sample.ts';

const office = { id: 'office', x: 0.9965, y: 1.004, calibrated: true, margin: even(5) };

describe('a printer that is off', () => {
  const stamp = printerWords(office)!;
  const layout = laid(MIDDLING, 'letter', { printer: office, stamp });

  it('is corrected on every page, the check sheet too, in the x and y of the page', () => {
    for (const page of layout.pages) {
      const sideways = page.paper.width > page.paper.height;
      expect(page.scale).toEqual(sideways ? { x: 1.004, y: 0.9965 } : { x: 0.9965, y: 1.004 });
    }
  });

  it('is stamped on every page', () => {
    for (const page of layout.pages) expect(wordsOf(page)).toContain(stamp);
  });

  it('where there is none, every page says so', () => {
    for (const page of laid(MIDDLING, 'letter', { stamp: 'not corrected' }).pages)
      expect(wordsOf(page)).toContain('not corrected');
  });

  it("its unprintable margins count where they are wider than the job's", () => {
    const wide = laid(MIDDLING, 'letter', {
      printer: { id: 'old', x: 1, y: 1, calibrated: true, margin: { top: 5, right: 5, bottom: 20, left: 5 } },
    });
    for (const sheet of sheetsIn(wide)) {
      const { pageX, pageY, width, height } = sheet.part;
      const [w, h] = sheet.rotation % 180 === 0 ? [width, height] : [height, width];
      const sideways = sheet.paper.width > sheet.paper.height;
      const [across, along] = sideways ? [20, 6.35] : [6.35, 20];
      expect(pageX + w).toBeLessThanOrEqual(sheet.paper.width - across + 1e-9);
      expect(pageY + h).toBeLessThanOrEqual(sheet.paper.height - along + 1e-9);
    }
  });
});
