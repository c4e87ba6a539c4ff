import { describe, expect, test } from 'vitest';
import { type PencilMarks, pencilMarks } from '../../src/bench/work/pencil.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';

const SHOP = `
units: mm
boards: {bone: {name: Bone, thickness: 2}, slate: {name: Slate, thickness: 1.4}}
heads: {pull: {bevel: 45, start: 1.2, stop: -0.4, overrun: 0.2}}
guide: {graduation: 1, setAt: 2}
`;

function marks(text: string, layer = 1): PencilMarks {
  const solved = solveJob(text, { file: 'job.yaml', shop: { text: SHOP, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  const { mat, job, strokes } = solved.value;
  return pencilMarks(mat, job, strokes, layer);
}

const said = ({ rows }: PencilMarks) =>
  rows.map(({ side, line, start, stop }) =>
    [
      side,
      ...[line, start, stop].map(
        ({ edge, setting }) => `${edge} ${setting.text}${setting.sense === 'exact' ? '' : ` ${setting.sense}`}`,
      ),
    ].join(', '),
  );

const PIECE = `
units: mm
mat: {outer: 300 x 400, border: {left: 50, right: 60, top: 70, bottom: 80}, layers: [{board: bone}]}
bench: {head: pull, mark: pencil}
`;
const RECTANGLE = `${PIECE}openings: [{shape: rectangle}]
`;

describe('marks by pencil', () => {
  test('each line from the edge that its guide rests on, S and E each from the edge that sets the side crossing there', () => {
    // By hand: the line lies a thickness outside the face line, S 1.4 before and E 0.6 past the corners; the face's left
    // is at the right, before the one who marks. 70 − 1.4 = 68.6 and 80 − 0.6 = 79.4, to half a millimetre.
    expect(said(marks(RECTANGLE)).sort()).toEqual([
      'bottom, bottom 82 mm, left 58.5 mm full, right 49.5 mm scant',
      'left, left 62 mm, top 68.5 mm full, bottom 79.5 mm scant',
      'right, right 52 mm, bottom 78.5 mm full, top 69.5 mm scant',
      'top, top 72 mm, right 48.5 mm full, left 59.5 mm scant',
    ]);
  });

  test('of a reverse bevel: from the far edges', () => {
    const text = RECTANGLE.replace('{board: bone}', '{board: bone, bevel: {angle: 45, reverse: true}}');
    // The left side before you lies 60 − 2 in from the left, 300 − 58 from the far edge.
    const left = said(marks(text)).find((row) => row.startsWith('left'));
    // It runs up, from the bottom side, whose guide rests on the top edge: 400 − 80 + 1.4.
    expect(left).toBe('left, right 242 mm, top 321.5 mm scant, bottom 330.5 mm full');
  });

  test('of an under mat cut together: from the top mat’s edges', () => {
    const text = RECTANGLE.replace('{board: bone}', '{board: bone}, {board: slate, reveal: 8, trimBack: 3}');
    const left = said(marks(text, 2)).find((row) => row.startsWith('left'));
    expect(left).toBe('left, left 69.5 mm scant, top 76.5 mm full, bottom 87.5 mm scant');
  });

  test('of an oval: its axes, pins and loop; other curves and slanting sides need the pattern', () => {
    const oval = marks(`${PIECE}openings: [{shape: oval}]`);
    expect(oval.rows).toEqual([]);
    const [drawn] = oval.ovals;
    // 190 × 250 on the face, 2 mm less all round on the back.
    expect(drawn!.size).toEqual({ width: 186, height: 246 });
    expect(drawn!.upright).toMatchObject({ edge: 'right', distance: 145 });
    expect(drawn!.pin).toBeCloseTo(Math.sqrt(123 ** 2 - 93 ** 2), 6);
    expect(marks(`${PIECE}openings: [{shape: arch}]`)).toMatchObject({ rows: [], ovals: [], patterned: [1] });
    expect(marks(`${PIECE}openings: [{shape: clipped, clip: 20}]`)).toMatchObject({ rows: [], patterned: [1] });
  });

  test('cannot be made where the pattern is to stay on the board', () => {
    const solved = solveJob(`${RECTANGLE}print: {transfer: cut-through}`, { shop: { text: SHOP, file: 'shop.yaml' } });
    expect(solved.ok ? [] : solved.problems.map(({ code }) => code)).toEqual(['pencil-cut-through']);
  });
});
