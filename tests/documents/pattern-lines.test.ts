import { describe, expect, it } from 'vitest';
import { build } from '../../src/index.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { type Expected, expectedLines, type Numbers } from './arithmetic.ts';
import { drawn, onPage, sameDash, sameEnds } from './sheets.ts';

const IN = 25.4;

interface Case {
  readonly name: string;
  readonly job: string;
  readonly shop: string;
  /** One for each layer. */
  readonly layers: readonly Numbers[];
}

const shop = (head: string): string => `
boards:
  bone: {thickness: 1.4 mm}
  thick: {thickness: 3 mm}
heads:
  pull: ${head}
`;
const PULL = '{bevel: 45, opening: left, start: 1.2 mm, stop: -0.4 mm, overrun: 0.25 mm}';
const marks = { start: 1.2, stop: -0.4, overrun: 0.25 };
const print = (more = ''): string => `print: {paper: letter, lap: 1/2, margin: 1/4${more}}`;

const CASES: readonly Case[] = [
  {
    name: 'double mat, top and under mat together',
    job: `
mat:
  outer: 16 x 20
  weighting: {add: 1/2}
  layers: [{board: bone}, {board: bone, reveal: 1/4, trimBack: 1/8}]
openings: [{artwork: 10 1/2 x 13 1/2, overlap: 1/4}]
bench: {head: pull, stack: together}
${print()}`,
    shop: shop(PULL),
    layers: [0, 1].map((layer) => ({
      width: 16 * IN,
      height: 20 * IN,
      border: {
        top: (3 + layer / 4) * IN,
        right: (2.75 + layer / 4) * IN,
        bottom: (3.5 + layer / 4) * IN,
        left: (2.75 + layer / 4) * IN,
      },
      thickness: 1.4,
      angle: 45,
      ...marks,
      inset: 4 + (layer * IN) / 8,
    })),
  },
  {
    name: 'lopsided, so that a pattern that is not mirrored shows',
    job: `
units: mm
mat: {outer: 400 x 300, border: {left: 50, right: 80, top: 60, bottom: 70}, layers: [{board: bone}]}
openings: [{artwork: 282 x 182}]
bench: {head: pull}
print: {paper: a4, lap: 12, margin: 6}`,
    shop: shop(PULL),
    layers: [
      {
        width: 400,
        height: 300,
        border: { left: 50, right: 80, top: 60, bottom: 70 },
        thickness: 1.4,
        angle: 45,
        ...marks,
        inset: 4,
      },
    ],
  },
  {
    name: 'at 60°, so that tan for cot shows, thick board, the other hand',
    job: `
units: mm
mat: {outer: 420 x 500, border: {sides: 70, top: 75, bottom: 90}, layers: [{board: thick, bevel: 60}]}
openings: [{size: 280 x 335}]
bench: {head: pull}
print: {paper: a4, lap: 12, margin: 6}`,
    shop: shop('{bevel: 60, opening: right, start: 2.1 mm, stop: 0.7 mm, overrun: 0.3 mm}'),
    layers: [
      {
        width: 420,
        height: 500,
        border: { left: 70, right: 70, top: 75, bottom: 90 },
        thickness: 3,
        angle: 60,
        hand: 'right',
        start: 2.1,
        stop: 0.7,
        overrun: 0.3,
        inset: 4,
      },
    ],
  },
  {
    name: 'reverse bevel: the line outside, the hand swapped',
    job: `
units: mm
mat: {outer: 420 x 500, border: {left: 80, right: 65, top: 75, bottom: 90}, layers: [{board: bone, bevel: {angle: 45, reverse: true}}]}
openings: [{size: 275 x 335}]
bench: {head: pull}
print: {paper: a4, lap: 12, margin: 6}`,
    shop: shop(PULL),
    layers: [
      {
        width: 420,
        height: 500,
        border: { left: 80, right: 65, top: 75, bottom: 90 },
        thickness: 1.4,
        angle: 45,
        reverse: true,
        ...marks,
        inset: 4,
      },
    ],
  },
  {
    name: 'cut through the paper, which lifts the line',
    job: `
units: mm
mat: {outer: 420 x 500, border: {sides: 70, top: 75, bottom: 90}, layers: [{board: bone}]}
openings: [{size: 280 x 335}]
bench: {head: pull}
print: {paper: a3, lap: 12, margin: 6, transfer: cut-through, paperThickness: 0.12}`,
    shop: shop(PULL),
    layers: [
      {
        width: 420,
        height: 500,
        border: { left: 70, right: 70, top: 75, bottom: 90 },
        thickness: 1.4,
        angle: 45,
        paper: 0.12,
        ...marks,
        inset: 4,
      },
    ],
  },
];

describe('every line of a pattern, read back from the PDF by pdf.js', () => {
  for (const one of CASES) {
    it(one.name, async () => {
      const made = await build(one.job, { file: 'job.yaml', shop: { text: one.shop, file: 'shop.yaml' } });
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      expect(made.value.files.map((file) => file.name)).toEqual(one.layers.map((_, i) => `pattern-${i + 1}.pdf`));
      for (const [i, numbers] of one.layers.entries()) {
        const record = made.value.report.patterns[i]!;
        const expected = expectedLines(numbers).map((line) => shifted(line, record.board!));
        const read = await readPdf(made.value.files[i]!.bytes);
        const seen = new Set<string>();
        for (const page of record.pages) {
          if (page.x === undefined) continue;
          const lines = drawn(read.pages[page.number - 1]!);
          for (const line of expected) {
            const [from, to] = [onPage(line.from, page), onPage(line.to, page)];
            if (!crosses(line, page as Required<typeof page>)) continue;
            const found = lines.filter((other) => sameDash(other.dash, line.dash) && sameEnds(other, from, to));
            expect(found.length, `${line.what} on ${page.name}`).toBe(1);
            seen.add(line.what);
          }
          const solid = lines.filter((line) => line.dash.length === 0);
          for (const line of solid) {
            const cut = expected.find(
              (e) => e.dash.length === 0 && sameEnds(line, onPage(e.from, page), onPage(e.to, page)),
            );
            expect(cut, `a solid line on ${page.name} that is no line to cut`).toBeDefined();
          }
        }
        expect([...seen].sort()).toEqual(expected.map((line) => line.what).sort());
      }
    });
  }
});

function shifted(line: Expected, by: { readonly x: number; readonly y: number }): Expected {
  const move = (p: Expected['from']) => ({ x: p.x + by.x, y: p.y + by.y });
  return { ...line, from: move(line.from), to: move(line.to) };
}

/** Whether an upright or level line runs through the inside of a sheet's part. */
function crosses({ from, to }: Expected, part: { x: number; y: number; width: number; height: number }): boolean {
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  return (
    left < part.x + part.width - 0.01 &&
    right > part.x + 0.01 &&
    top < part.y + part.height - 0.01 &&
    bottom > part.y + 0.01
  );
}
