import { describe, expect, it } from 'vitest';
import { build } from '../../src/index.ts';
import { type ReadLine, type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { sameDash } from './sheets.ts';

interface Line {
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}

/** A pattern on one page of its own size, read back: in mm from the board's top left as it is drawn. */
async function drawnOn(job: string, shop?: string, name = 'pattern-1.pdf') {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const built = await build(`units: mm\n${job}`, { ...source, paper: 'fit', file: 'job.yaml' });
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  const record = built.value.report.patterns.find(({ file }) => file === name)!;
  const [part] = record.pages.filter(({ width }) => width !== undefined);
  const { pages } = await readPdf(built.value.files.find((file) => file.name === name)!.bytes);
  const page = pages[part!.number - 1]!;
  // The page shows the drawing from its own corner on; the board lies in the drawing.
  const [x, y] = [part!.pageX! - part!.x! + record.board!.x, part!.pageY! - part!.y! + record.board!.y];
  expect(part!.rotation).toBe(0);
  const back = (p: Line['from']) => ({ x: p.x - x, y: p.y - y });
  const moved = (line: ReadLine): ReadLine => ({ ...line, from: back(line.from), to: back(line.to) });
  return {
    page,
    lines: page.lines.filter(({ form }) => form).map(moved),
    curves: page.curves.filter(({ form }) => form),
    back,
  };
}

const withDash = (lines: readonly ReadLine[], dash: readonly number[]): readonly ReadLine[] =>
  lines.filter((line) => line.stroke !== undefined && sameDash(line.dash, dash));

const has = (lines: readonly ReadLine[], [x0, y0, x1, y1]: readonly [number, number, number, number]): boolean =>
  lines.some(({ from, to }) =>
    [
      [from, to],
      [to, from],
    ].some(([a, b]) => Math.hypot(a!.x - x0, a!.y - y0) < 0.002 && Math.hypot(b!.x - x1, b!.y - y1) < 0.002),
  );

const words = ({ texts }: ReadPage): string => texts.map(({ text }) => text).join(' ');

const HINGE = [3, 2];
const CENTRE = [5, 1, 1.2, 1];

describe('the edge along which window and backing hinge', () => {
  /** 4 mm of trim and 2.5 more inside of the edge, from a fifth to 44 % of it and from 56 % to four fifths. */
  const places = {
    // Named from the face: its left lies at the right when seen from the back.
    left: [
      [300 - 6.5, 6.5 + 0.2 * 387, 300 - 6.5, 6.5 + 0.44 * 387],
      [300 - 6.5, 6.5 + 0.56 * 387, 300 - 6.5, 6.5 + 0.8 * 387],
    ],
    right: [
      [6.5, 6.5 + 0.2 * 387, 6.5, 6.5 + 0.44 * 387],
      [6.5, 6.5 + 0.56 * 387, 6.5, 6.5 + 0.8 * 387],
    ],
    top: [
      [6.5 + 0.2 * 287, 6.5, 6.5 + 0.44 * 287, 6.5],
      [6.5 + 0.56 * 287, 6.5, 6.5 + 0.8 * 287, 6.5],
    ],
  } as const;

  it.each(['left', 'right', 'top'] as const)('is marked on the back where the face has its %s', async (side) => {
    const { lines } = await drawnOn(
      `mat: {outer: 300 x 400}\nopenings: [{size: 140 x 200}]\nbench: {hinge: ${side}}\n`,
    );
    const marked = withDash(lines, HINGE);
    expect(marked).toHaveLength(2);
    for (const place of places[side]) expect([place, has(marked, place)]).toEqual([place, true]);
  });
});

describe('an oval', () => {
  /** Its face is 200 × 140, 50 from the left and 80 from the right, seen from the face. */
  const job = (more = '', layer = ''): string =>
    `mat: {border: {left: 50, right: 80, top: 60, bottom: 90}, layers: [{board: {thickness: 1.5}${layer}}]}\nopenings: [{shape: oval, size: 200 x 140}]\n${more}`;

  it.each([
    ['seen from the back, a bevel of 45° in from the face', '', '', 1.5],
    ['at 60°, where tan is not cot', '', ', bevel: 60', 1.5 / Math.sqrt(3)],
    ['reversed, a setback out', '', ', bevel: {angle: 60, reverse: true}', -1.5 / Math.sqrt(3)],
    [
      'cut through paper of 0.2 mm, which lifts the line',
      'print: {transfer: cut-through, paperThickness: 0.2}\n',
      ', bevel: 60',
      1.7 / Math.sqrt(3),
    ],
    [
      'cut through paper, reversed',
      'print: {transfer: cut-through, paperThickness: 0.2}\n',
      ', bevel: {angle: 60, reverse: true}',
      -1.7 / Math.sqrt(3),
    ],
  ])('is drawn %s', async (_, more, layer, inwards) => {
    const { curves, back } = await drawnOn(job(more, layer));
    const solid = curves.filter(({ dash, stroke }) => stroke !== undefined && dash.length === 0);
    expect(solid.length).toBeGreaterThan(3);
    const ends = solid.flatMap(({ from, to }) => [back(from), back(to)]);
    // The face's right border of 80 lies at the left.
    expect(Math.min(...ends.map(({ x }) => x))).toBeCloseTo(80 + inwards, 2);
    expect(Math.max(...ends.map(({ x }) => x))).toBeCloseTo(280 - inwards, 2);
    expect(Math.min(...ends.map(({ y }) => y))).toBeCloseTo(60 + inwards, 2);
    expect(Math.max(...ends.map(({ y }) => y))).toBeCloseTo(200 - inwards, 2);
  });

  it('has axes, pins and loop of the line that is drawn, not of the face', async () => {
    const { page, lines } = await drawnOn(job());
    const [a, b] = [100 - 1.5, 70 - 1.5];
    const pin = Math.sqrt(a * a - b * b);
    const [x, y] = [180, 130];
    const marks = withDash(lines, CENTRE);
    // Axes begin 1 mm inside of the line and go on to 12 mm; crosses reach 4 mm each way.
    expect(has(marks, [x, y - b + 1, x, y - b + 12])).toBe(true);
    expect(has(marks, [x + a - 1, y, x + a - 12, y])).toBe(true);
    expect(has(marks, [x, y + b - 1, x, y + b - 12])).toBe(true);
    expect(has(marks, [x - a + 1, y, x - a + 12, y])).toBe(true);
    for (const at of [x - pin, x, x + pin]) {
      expect(has(marks, [at - 4, y, at + 4, y])).toBe(true);
      expect(has(marks, [at, y - 4, at, y + 4])).toBe(true);
    }
    const said = words(page);
    expect(said).toContain('axes 197 mm × 137 mm');
    // √(98.5² − 68.5²) = 70.781; the loop is 2 × (98.5 + 70.781) = 338.56.
    expect(said).toMatch(/pins 70\.(?:8|78) mm either side of the centre/);
    expect(said).toMatch(/loop 338\.(?:6|56) mm/);
  });
});

describe('what is done on the face', () => {
  it('lies where the face has it, not mirrored and not moved: groove, opening, marks', async () => {
    const shop = 'units: mm\nheads: {h: {bevel: 45, opening: left, start: 1.2, stop: -0.4}}\n';
    const job =
      'mat: {outer: 300 x 400, layers: [{board: {thickness: 1.5}}]}\nopenings: [{size: 120 x 160, place: {left: 60, top: 80}, lines: [{distance: 20, width: 2}]}]\nbench: {head: h}\n';
    const { lines } = await drawnOn(job, shop, 'pattern-face.pdf');
    const opening = withDash(lines, [4, 1, 0.7, 1, 0.7, 1]);
    expect(has(opening, [60, 80, 180, 80])).toBe(true);
    expect(has(opening, [60, 240, 180, 240])).toBe(true);
    // The middle runs 20 outside of the opening, the two edges 19 and 21.
    const middle = withDash(lines, [0.5, 1.5]);
    expect(has(middle, [40, 60, 200, 60])).toBe(true);
    expect(has(middle, [40, 260, 200, 260])).toBe(true);
    const edges = withDash(lines, []);
    expect(edges).toHaveLength(8);
    for (const by of [19, 21]) {
      expect(has(edges, [60 - by, 80 - by, 180 + by, 80 - by])).toBe(true);
      expect(has(edges, [60 - by, 80 - by, 60 - by, 240 + by])).toBe(true);
      expect(has(edges, [180 + by, 80 - by, 180 + by, 240 + by])).toBe(true);
      expect(has(edges, [60 - by, 240 + by, 180 + by, 240 + by])).toBe(true);
    }
    // On the left the first pass travels down with the opening on its left; it starts 1.2 ahead of the corner at 60.
    const marks = withDash(lines, [2.5, 0.8]).filter(({ from, to }) => Math.abs(from.y - to.y) < 0.001);
    expect(marks.some(({ from, to }) => Math.max(from.x, to.x) < 42 && Math.abs(from.y - (60 - 1.2)) < 0.002)).toBe(
      true,
    );
    expect(marks.some(({ from, to }) => Math.max(from.x, to.x) < 42 && Math.abs(from.y - (260 + 0.4)) < 0.002)).toBe(
      true,
    );
  });
});
