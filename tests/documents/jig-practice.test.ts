import { describe, expect, it } from 'vitest';
import { CORNER_PICTURES } from '../../src/documents/jigs/corner-pictures.ts';
import { itemBox } from '../../src/drawing/bounds.ts';
import { contains } from '../../src/geometry/box.ts';
import { make, solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { type ReadLine, type ReadPage, readPdf } from '../readers/pdf-lines.ts';

const HEADS = {
  left: 'heads: {pull: {bevel: 45, opening: left, start: 1.2 mm, stop: -0.4 mm, overrun: 0.25 mm}}\n',
  right: 'heads: {pull: {bevel: 45, opening: right, start: 0.8 mm, stop: 0.9 mm, overrun: 0.3 mm}}\n',
};

async function practice(units: 'in' | 'mm', shop: string, paper: string): Promise<readonly ReadPage[]> {
  const made = await make(
    'jig',
    { jobs: [], shop: { text: shop, file: 'shop.yaml' } },
    { kind: 'practice', units, paper },
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return (await readPdf(made.value.files[0]!.bytes)).pages;
}

const isLevel = ({ from, to }: ReadLine): boolean => Math.abs(from.y - to.y) < 1e-6;
const dashed = (page: ReadPage, on: number): readonly ReadLine[] =>
  page.lines.filter(({ dash, stroke }) => stroke !== undefined && Math.abs((dash[0] ?? 0) - on) < 1e-3);

describe.each(Object.entries(HEADS))('the practice sheet of a head with the opening at its %s', (_, shop) => {
  it.each([
    ['in', 'letter'],
    ['mm', 'a4'],
    ['mm', 'a3'],
  ] as const)(
    'in %s on %s: rings of an inch, a border of two, marks as of any mat and short of the next ring',
    async (units, paper) => {
      const page = (await practice(units, shop, paper)).find(({ texts }) =>
        texts.some(({ text }) => text.startsWith('BACK')),
      )!;
      const edges = dashed(page, 0.8);
      const [left, top] = [Math.min(...edges.map(({ from }) => from.x)), Math.min(...edges.map(({ from }) => from.y))];
      const lines = page.lines.filter(
        ({ dash, stroke, widthPt }) =>
          stroke !== undefined && dash.length === 0 && Math.abs(widthPt - (0.25 * 72) / 25.4) < 1e-3,
      );
      const level = lines
        .filter(isLevel)
        .map(({ from }) => from.y - top)
        .sort((a, b) => a - b);
      const upright = lines
        .filter((each) => !isLevel(each))
        .map(({ from }) => from.x - left)
        .sort((a, b) => a - b);
      expect(level).toHaveLength(4);
      upright.forEach((at, i) => {
        expect(at).toBeCloseTo(level[i]!, 3);
      });
      // The line on the back lies a setback nearer to the opening's middle than the face: 1.4 mm at 45 degrees.
      const borders = level.map((at) => at - 1.4);
      expect(borders[0]!).toBeGreaterThanOrEqual(50.79);
      borders.slice(1).forEach((at, i) => {
        expect(at - borders[i]!).toBeGreaterThanOrEqual(25.39);
      });

      const ticks = dashed(page, 2.4);
      expect(ticks).toHaveLength(8);
      for (const tick of ticks) {
        const own = isLevel(tick) ? [tick.from.x - left, tick.to.x - left] : [tick.from.y - top, tick.to.y - top];
        const middle = (own[0]! + own[1]!) / 2;
        const ring = level.findIndex((at) => Math.abs(at - middle) < 1e-3);
        expect(ring).toBeGreaterThanOrEqual(0);
        for (const other of level.filter((_each, i) => i !== ring))
          for (const end of own) expect(Math.abs(end - other)).toBeGreaterThan(10);
      }

      // Where the marks lie along their lines the solver says of the same mat.
      for (const border of borders) {
        const solved = solveJob(
          `units: mm\nmat: {outer: 350 x 400, border: ${border}, layers: [{board: {thickness: 1.4 mm}}]}\nopenings: [{}]\nbench: {head: pull, snap: false}\n`,
          { shop: { text: shop, file: 'shop.yaml' } },
        );
        if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
        const marks = solved.value.strokes.flatMap(({ start, stop }) => [start, stop]);
        const near = marks.filter(({ x, y }) => x < 175 && y < 200);
        expect(near).toHaveLength(2);
        for (const { x, y } of near) {
          const found = ticks.some((tick) => {
            const along = isLevel(tick) ? tick.from.y - top - y : tick.from.x - left - x;
            const middle = isLevel(tick)
              ? (tick.from.x + tick.to.x) / 2 - left - x
              : (tick.from.y + tick.to.y) / 2 - top - y;
            return Math.abs(along) < 0.01 && Math.abs(middle) < 0.01;
          });
          expect(found, `${border}: ${x} ${y}`).toBe(true);
        }
      }
    },
  );
});

it('says for every opening its setting, what alone is new and what to look for; a fresh slip sheet each time', async () => {
  const pages = await practice('in', HEADS.left, 'letter');
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  for (const setting of ['5 in', '4 in', '3 in', '2 in']) expect(words).toContain(setting);
  for (const part of [
    'fresh one each time',
    'one thing at a time',
    'The depth alone',
    'The marks alone',
    'puncture-proof',
  ])
    expect(words).toContain(part);
});

it('shows what one sees and what to do in pictures, each whole within its frame', async () => {
  const pages = await practice('in', HEADS.left, 'letter');
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  expect(CORNER_PICTURES.length).toBeGreaterThanOrEqual(8);
  expect(new Set(CORNER_PICTURES.map(({ drawing }) => JSON.stringify(drawing.groups))).size).toBe(
    CORNER_PICTURES.length,
  );
  for (const { sees, does, drawing } of CORNER_PICTURES) {
    expect(words).toContain(sees);
    expect(words).toContain(does.replace(/½/u, '1/2'));
    expect(JSON.parse(JSON.stringify(drawing))).toEqual(drawing);
    const frame = { x: 0, y: 0, width: drawing.width, height: drawing.height };
    for (const item of drawing.groups.flatMap(({ items }) => items)) {
      const area = itemBox(item, drawing.pens, FONTS);
      if (area !== undefined) expect(contains(frame, area, 0.4), sees).toBe(true);
    }
  }
});
