import { describe, expect, it } from 'vitest';
import { placement } from '../../src/documents/placement/placement.ts';
import type { FullScale } from '../../src/drawing/full-scale.ts';
import { build } from '../../src/index.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import type { PageRecord } from '../../src/paper/manifest.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { HERON, type JobText, PAPERS, type Sheet, TEMPLATES, turned } from './pattern-printed.ts';
import { faults, inkBox, shownWords } from './pattern-words.ts';
import { onPage } from './sheets.ts';

const SEVERAL: JobText = {
  name: 'four in a grid',
  job: `
mat: {outer: 20 x 24}
openings: [{name: Ebb, artwork: 5 x 6, overlap: 1/4}, {name: Flood, artwork: 5 x 6, overlap: 1/4}, {name: Slack, artwork: 5 x 6, overlap: 1/4}, {name: Low, artwork: 5 x 6, overlap: 1/4}]
arrange: {columns: 2, gap: 1 1/2}
`,
};

const JOBS = [...TEMPLATES.filter(({ job }) => /artwork:/.test(job)), HERON, SEVERAL];

async function placed({ job, shop }: JobText, paper: string) {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const built = await build(job, { ...source, paper, documents: ['placement'] });
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  const record = built.value.report.sheets!.placement!;
  const { pages } = await readPdf(built.value.files[0]!.bytes);
  const sheets = record.pages.flatMap((each): Sheet[] =>
    each.width === undefined ? [] : [{ record: each, page: pages[each.number - 1]! }],
  );
  return { record, sheets };
}

/** The sheet before it is laid on paper. */
function placementOf(job: string): FullScale {
  const solved = solveJob(job);
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const made = placement(solved.value.mat, solved.value.job, FONTS);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.sheet;
}

const cornerOf = ({ record }: Sheet): string => record.name.split('-')[0]!;

describe.each(JOBS)('the placement sheets of $name', (each) => {
  it.each(PAPERS)('have their words whole on %s, and TOP upright on every corner', async (paper) => {
    const { record, sheets } = await placed(each, paper);
    expect(sheets.flatMap(({ page, record: of }) => faults(page, of))).toEqual([]);
    for (const corner of new Set(sheets.map(cornerOf))) {
      const tops = sheets.filter((sheet) => cornerOf(sheet) === corner).flatMap((sheet) => turned(sheet, /TOP/));
      if (record.extent === 'corners') expect(tops).toEqual([0]);
    }
    if (record.extent === 'whole') expect(sheets.flatMap((sheet) => turned(sheet, /TOP/))).toEqual([0]);
  });
});

it('the words of one of several artworks stand in no other', async () => {
  const { record, sheets } = await placed(SEVERAL, 'letter');
  const { x, y } = record.board!;
  for (const { page, record: of } of sheets) {
    for (const word of shownWords(page)) {
      const named = record.artworks.find(({ name }) => name === word.text);
      if (named === undefined || word.layer === undefined) continue;
      const box = inkBox(word);
      const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      for (const other of record.artworks) {
        const [a, b] = [
          { x: x + other.fromLeft, y: y + other.fromTop },
          { x: x + record.board!.width - other.fromRight, y: y + record.board!.height - other.fromBottom },
        ].map((p) => onPage(p, of as Required<PageRecord>));
        const inside =
          middle.x > Math.min(a!.x, b!.x) &&
          middle.x < Math.max(a!.x, b!.x) &&
          middle.y > Math.min(a!.y, b!.y) &&
          middle.y < Math.max(a!.y, b!.y);
        expect(inside && other.name !== named.name).toBe(false);
      }
    }
  }
});

const SMALL: JobText = {
  name: 'five small works in a row',
  job: `
mat: {outer: 32 x 14}
openings: [${Array.from({ length: 5 }, () => '{artwork: 4 x 6, overlap: 1/4}').join(', ')}]
arrange: {gap: 1}
`,
};

describe('several small works share sheets', () => {
  it.each([
    ['five in a row', SMALL, 'letter', 4],
    ['five in a row', SMALL, 'tabloid', 4],
    ['four in a grid', SEVERAL, 'tabloid', 4],
  ] as const)('%s take no more than they need, each work whole and its words with it', async (_, each, paper, most) => {
    const { record, sheets } = await placed(each, paper);
    expect(sheets.length).toBeLessThanOrEqual(most);
    const said = sheets.flatMap(({ page }) => shownWords(page).map(({ text }) => text)).join(' ');
    for (const { name } of record.artworks) expect(said).toContain(name);
    // Every artwork lies wholly in what the sheets show, and so does the corner that each group is laid on by.
    const { x, y, width, height } = record.board!;
    const corners = [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ] as const;
    const shows = (px: number, py: number, among = sheets): boolean =>
      among.some(({ record: of }) => {
        const part = of as Required<PageRecord>;
        return (
          px >= part.x - 0.01 &&
          px <= part.x + part.width + 0.01 &&
          py >= part.y - 0.01 &&
          py <= part.y + part.height + 0.01
        );
      });
    for (const art of record.artworks) {
      for (const px of [x + art.fromLeft, x + width - art.fromRight])
        for (const py of [y + art.fromTop, y + height - art.fromBottom]) expect(shows(px, py)).toBe(true);
    }
    for (const corner of new Set(sheets.map(cornerOf))) {
      const own = sheets.filter((sheet) => cornerOf(sheet) === corner);
      expect(corners.some(([px, py]) => shows(px, py, own))).toBe(true);
      expect(own.flatMap((sheet) => turned(sheet, /TOP/))).toEqual([0]);
    }
    expect(sheets.flatMap(({ page, record: of }) => faults(page, of))).toEqual([]);
  });
});

it('every kind of line of a placement sheet stands in the legend, and nothing else does', async () => {
  const solved = placementOf(SEVERAL.job);
  const used = new Set(
    solved.drawing.groups.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'line' || item.kind === 'path' ? (item.pen ?? []) : [])),
    ),
  );
  const explained = solved.legend.map(({ pen }) => pen);
  expect(new Set(explained)).toEqual(used);
  expect(explained).toHaveLength(used.size);
});
