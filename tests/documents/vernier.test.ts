import { describe, expect, test } from 'vitest';
import { type Raster, renderPdfPage } from '../../src/dev/render.ts';
import { JIG_PENS } from '../../src/documents/jigs/jig.ts';
import { READING_RULE, readingAt, rule, slip } from '../../src/documents/jigs/vernier.ts';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { sheetsDocument } from '../../src/paper/sheets.ts';
import { moved } from '../../src/text/block.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { darkness } from '../writers/pixels.ts';

const DPI = 900;
const PER_MM = DPI / 25.4;
const [WIDTH, HEIGHT] = [80, 36];
/** Where the rule's nought stands on the page, and its edge. */
const [NOUGHT, EDGE] = [14, 18];

/** The rule, and the slip laid against it so that its nought stands at `place`, where the blade's cut ends. */
async function laid(place: number): Promise<Raster> {
  const items: Item[] = [
    ...moved(rule(-5, 40, 'rule', FONTS).items, NOUGHT, EDGE),
    ...moved(slip('slip').items, NOUGHT + place, EDGE),
  ];
  const drawing: Drawing = {
    title: 'vernier',
    width: WIDTH,
    height: HEIGHT,
    view: 'sheet',
    pens: JIG_PENS,
    groups: [{ name: 'jig', label: 'jig', shown: true, items }],
  };
  const bytes = await writePdf(sheetsDocument({ title: 'vernier', subject: 'test', sheets: [drawing] }), {
    fonts: FONTS,
  });
  return renderPdfPage(bytes, 0, DPI);
}

/** Middles of the upright lines that cross a height of the page, mm from the rule's nought. */
function linesAcross(raster: Raster, y: number, from: number, to: number): number[] {
  const row = Math.round((EDGE + y) * PER_MM);
  const found: number[] = [];
  let [weight, moment] = [0, 0];
  for (let x = Math.round((NOUGHT + from) * PER_MM); x < (NOUGHT + to) * PER_MM; x++) {
    const dark = darkness(raster, x, row);
    if (dark > 0.08) {
      weight += dark;
      moment += dark * (x + 0.5);
    } else if (weight > 0) {
      found.push(moment / weight / PER_MM - NOUGHT);
      [weight, moment] = [0, 0];
    }
  }
  return found;
}

/** What somebody reads who knows nothing but the sheet's rule. */
function read(raster: Raster): { whole: number; tenths: number } {
  // The outlines of both stand 5 mm beyond their first and last line.
  const close = (x: number, i: number, all: readonly number[]) =>
    all.some((other, k) => k !== i && Math.abs(other - x) < 3);
  const ofRule = linesAcross(raster, 2.2, -12, 48).filter(close);
  const ofSlip = linesAcross(raster, -2.2, -12, 48).filter(close);
  expect(ofSlip).toHaveLength(11);
  expect(ofRule).toHaveLength(46);
  const misses = ofSlip.slice(0, 10).map((x) => Math.min(...ofRule.map((mark) => Math.abs(mark - x))));
  const tenths = misses.indexOf(Math.min(...misses));
  const left = ofRule.filter((mark) => mark <= ofSlip[0]! + 0.03).length;
  return { whole: -5 + left - 1, tenths };
}

describe('the rule and its slip', () => {
  const places = Array.from({ length: 50 }, (_, i) => Math.round((-3.7 + i * 0.43) * 10) / 10);

  test.each(places)('the blade’s cut ends at %f mm', async (place) => {
    const seen = read(await laid(place));
    expect(seen).toEqual(readingAt(place));
    expect(seen.whole + seen.tenths / 10).toBeCloseTo(place, 9);
  });

  test('places between two tenths are read to the nearer one', async () => {
    for (const place of [3.13, 7.78, -1.42, 0.04]) expect(read(await laid(place))).toEqual(readingAt(place));
    expect(readingAt(3.13)).toEqual({ whole: 3, tenths: 1 });
    expect(readingAt(-1.42)).toEqual({ whole: -2, tenths: 6 });
  });

  test('the rule as the sheets say it', () => {
    expect(READING_RULE).toMatch(/at or left of the slip’s 0.*runs straight on into a line of the rule/);
  });
});
