import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facePattern } from '../../src/documents/pattern/face.ts';
import { pattern } from '../../src/documents/pattern/pattern.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';

const shop = (hand: string, more = ''): { text: string; file: string } => ({
  file: 'shop.yaml',
  text: `units: mm
heads: {h: {bevel: 45, opening: ${hand}, start: 1.2, stop: -0.4, overrun: 0.25}}
guide: {graduation: 1, a: 0, b: 1${more}}
`,
});

/** 300 × 400 with an opening of 120 × 160 whose face lies 60 from the left and 80 from the top. */
const job = (line: string, opening = 'size: 120 x 160'): string => `units: mm
mat: {outer: 300 x 400, layers: [{board: {name: b, thickness: 1.5}}]}
openings: [{name: Heron, ${opening}, place: {left: 60, top: 80}, lines: [${line}]}]
bench: {head: h}
`;

function solved(text: string, hand = 'left', more = '') {
  const made = solveJob(text, { shop: shop(hand, more) });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

describe('V-grooves', () => {
  it('are cut in two passes on the face: near edge on the guide, then far edge, both to the same middle', () => {
    const { grooves } = solved(job('{distance: 20, width: 2}'));
    expect(grooves.length).toBe(8);
    expect(grooves.map((s) => s.order)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const reading = (pass: number) =>
      Object.fromEntries(grooves.filter((s) => s.pass === pass).map((s) => [s.side, s.guide]));
    // 60 − 20 = 40 from the left, 300 − 180 − 20 = 100 from the right; 80 − 20 and 400 − 240 − 20 down.
    expect(reading(1)).toEqual({ left: 40, right: 100, top: 60, bottom: 140 });
    expect(reading(2)).toEqual({ left: 260, right: 200, top: 340, bottom: 260 });
    for (const s of grooves) expect(s.depth).toBeCloseTo(1, 12);
  });

  it.each([
    // Half of the width times the tangent: √3 at 60°, its inverse at 30°.
    [30, 0.75 / Math.sqrt(3)],
    [45, 0.75],
    [60, 0.75 * Math.sqrt(3)],
  ])('at %i° go %f mm deep where they are 1.5 mm wide, and their reading follows', (angle, depth) => {
    const text = job('{distance: 20, width: 1.5}').replace('thickness: 1.5', 'thickness: 3');
    const { file, text: usual } = shop('left', ', setAt: 3');
    const made = solveJob(text, { shop: { file, text: usual.replace('bevel: 45', `bevel: ${angle}`) } });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { grooves } = made.value;
    expect(grooves.length).toBe(8);
    expect(grooves.length).toBe(8);
    for (const s of grooves) expect(s.depth).toBeCloseTo(depth, 12);
    // Set at 3 mm: the bar is lower by all that the groove is not deep, and the bevel carries that sideways by its cotangent.
    const left = grooves.find((s) => s.side === 'left' && s.pass === 1)!;
    expect(left.guide).toBeCloseTo(40 + (depth - 3) / Math.tan((angle * Math.PI) / 180), 9);
  });

  it('enter half a width inside of the middle, then outside, and lean towards it on one hand of the travel', () => {
    for (const hand of ['left', 'right'] as const) {
      const { grooves } = solved(job('{distance: 20, width: 2}'), hand);
      for (const s of grooves) {
        const left = { x: s.direction.y, y: -s.direction.x };
        const toMiddle = { x: s.face.from.x - s.line.from.x, y: s.face.from.y - s.line.from.y };
        const aside = toMiddle.x * left.x + toMiddle.y * left.y;
        // The blade leans away from the hand on which openings lie, in both passes.
        expect(aside).toBeCloseTo(hand === 'left' ? -1 : 1, 9);
        const middle = { x: 120, y: 160 };
        const inner = s.pass === 1 ? 1 : -1;
        const outward = { x: s.face.from.x - middle.x, y: s.face.from.y - middle.y };
        expect(Math.sign(toMiddle.x * outward.x + toMiddle.y * outward.y)).toBe(inner);
      }
    }
  });

  it('begin and stop at the corners by the head’s offsets, without an overrun', () => {
    const { grooves } = solved(job('{distance: 20, width: 2}'));
    for (const s of grooves) {
      const along = (p: { x: number; y: number }, from: { x: number; y: number }): number =>
        (p.x - from.x) * s.direction.x + (p.y - from.y) * s.direction.y;
      const beyond = s.pass === 2 ? 1 : 0;
      expect(along(s.start, s.face.from)).toBeCloseTo(-1.2 - beyond, 9);
      expect(along(s.stop, s.face.to)).toBeCloseTo(0.4 + beyond, 9);
    }
  });

  it('count the depth of the groove, not of the board, where the bar rests on it', () => {
    const { grooves } = solved(job('{distance: 20, width: 2}'), 'left', ', setAt: 1.5');
    const left = grooves.find((s) => s.side === 'left' && s.pass === 1)!;
    // The blade enters 41 from the edge; a guide set at 1.5 mm shows 1.5 less.
    expect(left.guide).toBeCloseTo(39.5, 9);
  });

  it('have a bar line past the guide, on the hand of the bar: outside for the first pass, inside for the second', () => {
    for (const hand of ['left', 'right']) {
      const text = job('{distance: 20, width: 2}');
      const bars = shop(hand, ', longest: 50');
      const made = solveJob(text, { shop: { ...bars, text: bars.text.replace('bevel: 45,', 'bevel: 45, bar: 30,') } });
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      const { grooves } = made.value;
      // 40 from the left is within reach, everything else is not.
      expect(grooves.filter((s) => s.bar === undefined).map((s) => [s.side, s.pass])).toEqual([['left', 1]]);
      for (const { bar, line, pass, face } of grooves) {
        if (bar === undefined) continue;
        const way = { x: bar.from.x - line.from.x, y: bar.from.y - line.from.y };
        expect(Math.hypot(way.x, way.y)).toBeCloseTo(30, 9);
        const outward = { x: face.from.x + face.to.x - 240, y: face.from.y + face.to.y - 320 };
        expect(Math.sign(way.x * outward.x + way.y * outward.y)).toBe(pass === 1 ? 1 : -1);
      }
    }
  });

  it('and ink lines run along the sides that were asked for alone', () => {
    const {
      grooves,
      mat,
      job: read,
      strokes,
    } = solved(job('{distance: 20, width: 2, sides: [top, left]}, {kind: ink, distance: 10, sides: [bottom]}'));
    expect([...new Set(grooves.map((s) => s.side))].sort()).toEqual(['left', 'top']);
    const drawn = (id: string) =>
      pattern(mat, strokes, read, 0, { fonts: FONTS }).drawing.groups.flatMap(({ items }) =>
        items.flatMap((item) =>
          item.kind === 'path' && item.id === id ? item.paths.map((path) => pathBox(path)) : [],
        ),
      );
    // From the back left and right change places; 1 mm of paper lies around the board.
    expect(drawn('groove-1-1')).toEqual([{ x: 101, y: 61, width: 160, height: 200 }]);
    const [ink] = drawn('ink-1-2');
    expect(ink).toMatchObject({ width: 140, height: 0 });
    expect(ink!.y).toBeCloseTo(251, 9);
    const face = facePattern(mat, read, { fonts: FONTS })!.drawing;
    const cut = face.groups.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'line' && item.pen === 'cut' ? [item] : [])),
    );
    expect(cut.length).toBe(4);
    expect(face.view).toBe('face');
  });

  it('round a curve have no strokes: by template or machine', () => {
    const { grooves, mat, job: read } = solved(job('{distance: 20, width: 2}', 'shape: oval, size: 120 x 160'));
    expect(grooves).toEqual([]);
    expect(
      facePattern(mat, read, { fonts: FONTS })!.drawing.groups.find(({ name }) => name === 'decor')!.items.length,
    ).toBeGreaterThan(0);
  });

  it('are refused where they go through, or along a side that is none', () => {
    const codes = (line: string, opening?: string) => {
      const made = solveJob(job(line, opening), { shop: shop('left') });
      return made.ok ? [] : made.problems.map(({ code, message }) => [code, message]);
    };
    expect(codes('{distance: 20, width: 3}')).toEqual([
      ['groove-deep', 'the groove 20 mm round Heron would be 1.5 mm deep, the board is 1.5 mm thick'],
    ]);
    expect(codes('{distance: 20, sides: [top]}', 'shape: oval, size: 120 x 160')).toEqual([
      ['line-side-none', 'the groove 20 mm round Heron, oval, has no straight top side'],
    ]);
    expect(codes('{distance: 20, sides: [middle]}').map(([code]) => code)).toEqual(['value-unknown']);
  });

  it('lie on their sides and inside the board, wherever the opening is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 25 }),
        fc.integer({ min: 2, max: 28 }),
        fc.boolean(),
        (distance, parts, left) => {
          const width = parts / 10;
          const { grooves, mat } = solved(job(`{distance: ${distance}, width: ${width}}`), left ? 'left' : 'right');
          const { faceBox } = mat.openings[0]!.layers[0]!;
          for (const s of grooves) {
            for (const p of [s.start, s.stop, s.line.from, s.line.to]) {
              expect(p.x > 0 && p.y > 0 && p.x < 300 && p.y < 400).toBe(true);
              const away =
                s.side === 'top'
                  ? faceBox.y - p.y
                  : s.side === 'bottom'
                    ? p.y - faceBox.y - faceBox.height
                    : s.side === 'left'
                      ? faceBox.x - p.x
                      : p.x - faceBox.x - faceBox.width;
              expect(away).toBeCloseTo(distance + (s.pass === 1 ? -1 : 1) * (width / 2), 9);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});
