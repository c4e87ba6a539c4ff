import { describe, expect, it } from 'vitest';
import { prepare, solveLoading, write } from '../../src/index.ts';
import type { ReadPage } from '../readers/pdf-lines.ts';
import { readPdf } from '../readers/pdf-lines.ts';

const SHOP = `units: mm
boards: {bone: {name: Bone, thickness: 1.4 mm, sheets: [810 x 1010], price: 9.5}}
prices: {currency: "£", labour: 20}
printers: {office: {margin: 15 mm}}
`;
const job = (margin: string): string => `title: Heron, linocut
customer: Saltmarsh Print Room
number: "41"
units: mm
mat: {outer: 400 x 500, layers: [{board: bone}, {board: bone, reveal: 6}]}
openings: [{artwork: 270 x 340, overlap: 6}]
count: 12
print: {paper: a4, printer: office${margin}}
`;

/** How near the ink of a page comes to its edges, words from the tops of capitals to their base line. */
function nearest({ width, height, lines, curves, texts }: ReadPage): number {
  const strokes = [...lines, ...curves];
  const points = [
    ...strokes.flatMap(({ from, to, widthPt, stroke, path }) => {
      const half = stroke === undefined ? 0 : (widthPt * 25.4) / 72.0 / 2;
      // A single line is cut off square at its ends; corners have tips.
      const alone = strokes.filter((other) => other.path === path).length === 1;
      const along = { x: alone && from.y === to.y ? 0 : half, y: alone && from.x === to.x ? 0 : half };
      return [from, to].flatMap(({ x, y }) => [
        { x: x - along.x, y: y - along.y },
        { x: x + along.x, y: y + along.y },
      ]);
    }),
    ...texts.flatMap(({ at, width: long, size, turn }) => {
      const way = { x: Math.cos((turn * Math.PI) / 180), y: Math.sin((turn * Math.PI) / 180) };
      const up = { x: way.y * 0.68 * size, y: -way.x * 0.68 * size };
      const end = { x: at.x + way.x * long, y: at.y + way.y * long };
      return [at, end, { x: at.x + up.x, y: at.y + up.y }, { x: end.x + up.x, y: end.y + up.y }];
    }),
  ];
  return Math.min(...points.flatMap(({ x, y }) => [x, y, width - x, height - y]));
}

const OUTPUTS = ['proof', 'ticket', 'blanks', 'labels', 'intake', 'stock'] as const;

async function pagesOf(output: (typeof OUTPUTS)[number], margin: string): Promise<readonly ReadPage[]> {
  const shop = { text: SHOP, file: 'shop.yaml' };
  const solved = await solveLoading(job(margin), { file: 'job.yaml', shop });
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const made = await prepare(output, { jobs: [solved.value], shop }, {});
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const written = await write(made.value);
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  return (await readPdf(written.value.find(({ name }) => name.endsWith('.pdf'))!.bytes)).pages;
}

describe.each(OUTPUTS)('%s', (output) => {
  it.each([
    ["the job's margin where it is the wider one", ', margin: 20', 20],
    ["the printer's own where that is", '', 15],
  ])('keeps %s', async (_, margin, least) => {
    const pages = await pagesOf(output, margin);
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) expect(nearest(page)).toBeGreaterThanOrEqual(least - 0.05);
  });
});

it('labels whose sheet’s edge lies too far within the margins are refused', async () => {
  const shop = { text: SHOP, file: 'shop.yaml' };
  const solved = await solveLoading(job(', margin: 29'), { file: 'job.yaml', shop });
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const made = await prepare('labels', { jobs: [solved.value], shop }, { rows: 12 });
  expect(made).toMatchObject({ ok: false, problems: [{ code: 'label-grid' }] });
});
