import { describe, expect, it } from 'vitest';
import { build } from '../../src/index.ts';
import type { JobOutput } from '../../src/outputs/build.ts';
import { type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { BARS, HERON, type JobText, LARGE, PAPERS, SMALL, TEMPLATES } from './pattern-printed.ts';
import { inkBox, overlap, shownWords } from './pattern-words.ts';

/** Sheets that come before those that lie on the board, of every document that has them. */
async function firstSheets({ job, shop }: JobText, paper: string, document: JobOutput, extent: 'whole' | 'corners') {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const built = await build(job, { ...source, paper, extent, documents: [document] });
  if (!built.ok) {
    // No artwork, nothing to place.
    if (built.problems.every(({ code }) => code === 'placement-artwork-missing')) return [];
    throw new Error(JSON.stringify(built.problems));
  }
  const { patterns, sheets } = built.value.report;
  const records = document === 'pattern' ? patterns : [sheets!.placement!];
  const found: ReadPage[] = [];
  for (const [i, { pages }] of records.entries()) {
    const read = (await readPdf(built.value.files[i]!.bytes)).pages;
    found.push(...pages.filter(({ width }) => width === undefined).map(({ number }) => read[number - 1]!));
  }
  return found;
}

/** Words over one another, or off the paper. */
function overprinted(page: ReadPage): readonly string[] {
  const words = shownWords(page).map((word) => ({ text: word.text, box: inkBox(word) }));
  return words.flatMap(({ text, box }, i) => {
    const off = box.x < 0 || box.y < 0 || box.x + box.width > page.width || box.y + box.height > page.height;
    const over = words.slice(i + 1).filter((other) => overlap(box, other.box));
    return [...(off ? [`"${text}" is cut off`] : []), ...over.map((other) => `"${text}" over "${other.text}"`)];
  });
}

const SMALL_WORKS: JobText = {
  name: 'five small works',
  job: `mat: {outer: 32 x 14}
openings: [${Array.from({ length: 5 }, () => '{artwork: 4 x 6, overlap: 1/4}').join(', ')}]
arrange: {gap: 1}
`,
};

/** More settings than one column holds. */
const MANY_SETTINGS: JobText = {
  name: 'twenty sides along a straightedge',
  job: `units: mm
mat: {outer: 201 x 292, layers: [{board: {thickness: 1.4}, bevel: {angle: 60, reverse: true}}]}
openings: [{shape: notched, notch: 9, steps: 2, artwork: 139 x 160, size: 133 x 154, place: {left: 33, top: 67}}]
bench: {head: h}
`,
  shop: 'units: mm\nheads: {h: {bevel: 45, opening: right, start: 0, stop: 0.9, overrun: 0.25, straightedge: 28}}\n',
};

describe.each([...TEMPLATES, HERON, BARS, ...LARGE, ...SMALL, SMALL_WORKS, MANY_SETTINGS])(
  'the first sheets of $name',
  (each) => {
    it.each(PAPERS)('have no word over another on %s, those of the map included', async (paper) => {
      let named = 0;
      for (const document of ['pattern', 'placement'] as const) {
        for (const extent of ['whole', 'corners'] as const) {
          const pages = await firstSheets(each, paper, document, extent);
          if (document === 'pattern') expect(pages.length).toBeGreaterThan(0);
          expect(pages.flatMap(overprinted)).toEqual([]);
          named += pages
            .flatMap(shownWords)
            .filter(({ text }) => /^(?:C\d(?:-[A-Z]\d+)?|[A-Z]\d+)$/u.test(text)).length;
        }
      }
      // Names of sheets stand on the map.
      expect(named).toBeGreaterThan(0);
    });
  },
);
