import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../src/documents/proof/dimensions.ts';
import { textWidth } from '../../src/fonts/measure.ts';
import { FONTS } from '../fonts/loaded.ts';
import { type ReadBox, type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { PIECES, proofOf } from './proofs.ts';

/** From the base line to the tops of capitals, along the words. */
function boxOf({ at, width, size, turn }: ReadPage['texts'][number]): ReadBox {
  const high = 0.68 * size;
  return turn === 270
    ? { x: at.x - high, y: at.y - width, width: high, height: width }
    : { x: at.x, y: at.y - high, width, height: high };
}

const meet = (a: ReadBox, b: ReadBox): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** No words over words, none over a thin line, none near the paper's edge. */
function expectRoom(page: ReadPage): void {
  const words = page.texts
    .filter(({ text }) => text.trim() !== '')
    .map((text) => ({ text: text.text, box: boxOf(text) }));
  for (const [i, { text, box }] of words.entries()) {
    expect(box.x, text).toBeGreaterThan(8);
    expect(box.y, text).toBeGreaterThan(8);
    expect(box.x + box.width, text).toBeLessThan(page.width - 8);
    expect(box.y + box.height, text).toBeLessThan(page.height - 8);
    for (const other of words.slice(i + 1)) expect(meet(box, other.box), `${text} | ${other.text}`).toBe(false);
    for (const { from, to, stroke } of page.lines) {
      if (stroke === undefined) continue;
      const line = {
        x: Math.min(from.x, to.x),
        y: Math.min(from.y, to.y),
        width: Math.abs(to.x - from.x),
        height: Math.abs(to.y - from.y),
      };
      expect(meet(box, line), `${text} on a line`).toBe(false);
    }
  }
}

describe('words have room', () => {
  for (const paper of ['letter', 'a4', 'a3']) {
    it.each(PIECES)(`$name on ${paper}`, async (each) => {
      const made = await proofOf(each, { dimensions: true, date: '12 March 2031', paper });
      for (const page of (await readPdf(made.pdf)).pages) expectRoom(page);
    });
  }

  const long = 'Unaussprechlichkeitsbescheinigung '.repeat(6).slice(0, 199);
  const layers = Array.from(
    { length: 8 },
    (_, i) => `{board: {name: "${i} ${long.slice(0, 190)}", thickness: 1.4 mm}${i === 0 ? '' : ', reveal: 3/8'}}`,
  );
  it.each([
    ['a title and a customer of two hundred characters', `title: "${long}"\ncustomer: "${long}"\n`, ''],
    ['a title of one word', `title: "${'W'.repeat(200)}"\n`, ''],
    ['eight layers with long names', '', `, layers: [${layers.join(', ')}]`],
    ['a panorama', '', ', border: 1'],
  ])('%s', async (name, head, mat) => {
    const opening = name === 'a panorama' ? '- {size: 90 x 12}' : '- {size: 6 x 8}';
    const outer = name === 'a panorama' ? '' : 'outer: 16 x 20';
    const job = `${head}mat: {${[outer, mat.slice(2)].filter((part) => part !== '').join(', ')}}\nopenings:\n  ${opening}\n`;
    for (const paper of ['letter', 'a4']) {
      const made = await proofOf(
        { job, file: 'job.yaml' },
        { dimensions: true, date: 'the twelfth of March 2031', paper },
      );
      const { pages } = await readPdf(made.pdf);
      for (const page of pages) expectRoom(page);
      const shown = pages
        .flatMap(({ texts }) => texts.map(({ text }) => text))
        .join('')
        .replaceAll(/\s/gu, '');
      if (head !== '') expect(shown).toContain(/"(.*?)"/.exec(head)![1]!.replaceAll(/\s/gu, ''));
      if (name.startsWith('eight'))
        expect(shown).toContain(`7${long.slice(0, 188)}`.replaceAll(/\s/gu, '').slice(0, 150));
    }
  });

  it('ways side by side, two on a small sheet and four on a large one', async () => {
    const names = ['Ivory', long.slice(0, 120), 'Slate', 'Rust'];
    const boards = names.map(
      (name, i) =>
        `b${i}: {name: "${name}", thickness: 1.4 mm, colour: "#40${i}0${i}0", sheets: [32 x 40], price: ${9 + i}}`,
    );
    const shop = `boards: {${boards.join(', ')}}\nprices: {currency: "£", labour: 20, unitedInch: 0.5}\n`;
    const job =
      'mat: {outer: 16 x 20, layers: [{board: b0}, {board: b1, reveal: 1/4}]}\nopenings: [{artwork: 10 x 13}]\n';
    const vary = 'mat.layers[1].board=b0,b1,b2,b3';
    for (const [paper, sheets] of [
      ['letter', 2],
      ['a4', 2],
      ['a3', 1],
      ['tabloid', 1],
    ] as const) {
      const made = await proofOf({ job, file: 'job.yaml', shop }, { vary, dimensions: true, paper });
      const { pages } = await readPdf(made.pdf);
      expect(pages).toHaveLength(sheets);
      for (const page of pages) expectRoom(page);
      const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text));
      for (const letter of ['A', 'B', 'C', 'D']) expect(words).toContain(letter);
    }
  });
});

describe('rows of dimensions', () => {
  const measured = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 1, max: 400 })), {
      minLength: 1,
      maxLength: 14,
    })
    .map((pairs) => pairs.map(([from, long]) => ({ from, to: from + long, text: String(long) })));

  it('hold every distance once, and in no row do two touch', () => {
    fc.assert(
      fc.property(measured, fc.constantFrom(0.05, 0.2, 0.5, 1), (all, scale) => {
        const rows = rowsOf(all, scale, FONTS);
        expect(rows.flat()).toHaveLength(all.length);
        expect(rows.at(-1)).toEqual([all.at(-1)]);
        for (const row of rows) {
          const spans = row.map(({ from, to, text }) => {
            const half = Math.max((to - from) * scale, textWidth(text, 'regular', 2.5, FONTS)) / 2;
            return [((from + to) * scale) / 2 - half, ((from + to) * scale) / 2 + half] as const;
          });
          spans.sort((a, b) => a[0] - b[0]);
          for (let i = 1; i < spans.length; i++) expect(spans[i]![0]).toBeGreaterThanOrEqual(spans[i - 1]![1] - 1e-6);
        }
      }),
    );
  });
});
