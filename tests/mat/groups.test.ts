import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../src/bench/model.ts';
import { mirror } from '../../src/bench/outline.ts';
import { contains } from '../../src/geometry/box.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { gapBetween, isInside, outlineOf } from '../../src/geometry/near.ts';
import type { Path, Segment } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import { solveJob } from '../../src/index.ts';
import type { Job } from '../../src/job/job.ts';
import type { Mat } from '../../src/mat/model.ts';
import { groupJob, groupShop } from './random-groups.ts';

const shop = { text: groupShop(), file: 'shop.yaml' };
const solved = (text: string) => solveJob(text, { file: 'job.yaml', shop });

function must(text: string): Mat {
  const made = solved(text);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.mat;
}

/** Face, back and reveal outlines nest and never cross; mirrored twice each is itself. */
function expectNested(mat: Mat): void {
  for (const { layers } of mat.openings) {
    const edges = layers.flatMap(({ face, back }, i) => (mat.layers[i]!.setback === 0 ? [face] : [face, back]));
    for (const [i, inner] of edges.slice(1).entries()) {
      const outside = outlineOf(edges[i]!);
      for (const p of flattened(inner, 0.5)) expect(isInside(outside, p)).toBe(true);
      // Outlines that nest and cross nowhere keep a distance.
      expect(gapBetween(edges[i]!, inner, 0.05)).toBeGreaterThan(0.3);
    }
    for (const edge of edges) {
      const twice = mirror(mirror(edge, mat.outer.width), mat.outer.width);
      const [now, before] = [cornersOf(twice), cornersOf(edge)];
      expect(now.length).toBe(before.length);
      for (const [k, p] of now.entries()) expect(Math.hypot(p.x - before[k]!.x, p.y - before[k]!.y)).toBeLessThan(1e-9);
      expect(twice.segments.map(turnOf)).toEqual(edge.segments.map(turnOf));
    }
  }
}

const turnOf = (s: Segment): string => (s.kind === 'arc' ? `arc ${s.clockwise}` : s.kind);

/** Every point that an outline is made of: ends, handles and centres. */
const cornersOf = ({ start, segments }: Path): readonly Point[] => [
  start,
  ...segments.flatMap((s) => (s.kind === 'cubic' ? [s.c1, s.c2, s.to] : s.kind === 'arc' ? [s.centre, s.to] : [s.to])),
];

/** Boxes are those of the outlines, borders and gaps those that were asked for. */
function expectPlaced(mat: Mat, job: Job): void {
  const board = { x: 0, y: 0, ...mat.outer };
  for (const { layers } of mat.openings) {
    for (const { face, back, faceBox, backBox } of layers) {
      for (const [path, box] of [
        [face, faceBox],
        [back, backBox],
      ] as const) {
        const own = pathBox(path);
        for (const key of ['x', 'y', 'width', 'height'] as const) expect(own[key]).toBeCloseTo(box[key], 2);
        expect(contains(board, own)).toBe(true);
      }
    }
  }
  for (const side of ['top', 'left', 'bottom', 'right'] as const) {
    const least = Math.min(...mat.openings.map(({ layers }) => layers[0]!.border[side]));
    expect(least).toBeCloseTo(job.mat.border[side]!, 6);
  }
  const [a, b] = mat.openings.map(({ layers }) => layers[0]!.faceBox);
  const first = job.arrange!.rows[0]!;
  if (first > 1 && !job.arrange!.columns) expect(b!.x - a!.x - a!.width).toBeCloseTo(job.arrange!.across!, 6);
}

/** Every straight stroke lies on its side of the outline, and inside the board. */
function expectOnSides(mat: Mat, strokes: readonly Stroke[]): void {
  for (const s of strokes) {
    const { face } = mat.openings[s.opening - 1]!.layers[s.layer - 1]!;
    const outline = outlineOf(mirror(face, mat.outer.width));
    // Its face line is a straight side of the outline, from corner to corner.
    const side = outline.pieces.some(
      (piece) =>
        piece.segment.kind === 'line' &&
        [piece.from, piece.segment.to].every((p) =>
          [s.face.from, s.face.to].some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-6),
        ),
    );
    expect(side).toBe(true);
    for (const p of [s.line.from, s.line.to, s.start, s.stop]) {
      expect(p.x > 0 && p.y > 0 && p.x < mat.outer.width && p.y < mat.outer.height).toBe(true);
      // All of it on one line, the setback to the inside.
      const way = { x: s.face.to.x - s.face.from.x, y: s.face.to.y - s.face.from.y };
      const off = (way.x * (p.y - s.face.from.y) - way.y * (p.x - s.face.from.x)) / Math.hypot(way.x, way.y);
      expect(Math.abs(off)).toBeCloseTo(mat.layers[s.layer - 1]!.setback, 6);
    }
    const middle = { x: (s.line.from.x + s.line.to.x) / 2, y: (s.line.from.y + s.line.to.y) / 2 };
    if (mat.layers[s.layer - 1]!.setback > 0) expect(isInside(outline, middle)).toBe(true);
  }
  expect([...strokes].map((s) => s.order).sort((a, b) => a - b)).toEqual(strokes.map((_, i) => i + 1));
}

describe('any job of several openings', () => {
  it('outlines nest, mirror back to themselves, lie where they should, and strokes lie on their sides', () => {
    let seen = 0;
    fc.assert(
      fc.property(groupJob, ({ text, count }) => {
        const made = solved(text);
        if (!made.ok) return;
        seen += count;
        const { mat, job, strokes } = made.value;
        expectNested(mat);
        expectPlaced(mat, job);
        expectOnSides(mat, strokes);
      }),
      { numRuns: 20 },
    );
    expect(seen).toBeGreaterThan(30);
  });

  it('what was solved, given back in any part, makes the same mat', () => {
    const parts = fc.record({ outer: fc.boolean(), border: fc.boolean(), gap: fc.boolean(), sizes: fc.boolean() });
    let compared = 0;
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 1, max: 3 }), parts, (count, columns, given) => {
        // Any three of outer, border, gap and sizes settle the fourth.
        if (Object.values(given).filter(Boolean).length < 3) return;
        const rows = Math.ceil(count / columns);
        const [w, h, gap, border] = [90, 120, 30, 60];
        const across = Math.min(count, columns);
        const outer = [2 * border + across * w + (across - 1) * gap, 2 * border + rows * h + (rows - 1) * gap];
        if ((!given.gap && (across === 1 || rows === 1)) || columns === 1) return;
        const mat = [
          ...(given.outer ? [`outer: ${outer[0]} x ${outer[1]}`] : []),
          ...(given.border ? [`border: ${border}`] : []),
          'layers: [{board: b}]',
        ];
        const made = must(`units: mm
mat: {${mat.join(', ')}}
openings: [${Array.from({ length: count }, () => (given.sizes ? `{size: ${w} x ${h}}` : '{}')).join(', ')}]
arrange: {columns: ${columns}${given.gap ? `, gap: ${gap}` : ''}}
bench: {head: h}`);
        compared++;
        expect(made.outer.width).toBeCloseTo(outer[0]!, 6);
        expect(made.outer.height).toBeCloseTo(outer[1]!, 6);
        for (const [i, { layers }] of made.openings.entries()) {
          const { faceBox } = layers[0]!;
          expect(faceBox.width).toBeCloseTo(w, 6);
          expect(faceBox.height).toBeCloseTo(h, 6);
          expect(faceBox.x).toBeCloseTo(border + (i % columns) * (w + gap), 6);
          expect(faceBox.y).toBeCloseTo(border + Math.floor(i / columns) * (h + gap), 6);
        }
      }),
      { numRuns: 80 },
    );
    expect(compared).toBeGreaterThan(5);
  });
});

describe('ways to lay openings out', () => {
  const boxes = (mat: Mat) => mat.openings.map(({ layers }) => layers[0]!.faceBox);
  const job = (openings: string, more: string): string =>
    `units: mm\nopenings: [${openings}]\nbench: {head: h, stack: apart}\n${more}`;

  it('a row stands on its base line, hangs from its top, or lies about its centre', () => {
    const two = '{size: 100 x 80}, {size: 60 x 140}';
    const tops = (align: string) =>
      boxes(must(job(two, `arrange: {rows: 1, gap: 20, align: ${align}}\nmat: {border: 50}`))).map((b) => b.y);
    expect(tops('centre')).toEqual([80, 50]);
    expect(tops('base')).toEqual([110, 50]);
    expect(tops('top')).toEqual([50, 50]);
  });

  it('a group that fills the mat has margins and gaps alike in each direction', () => {
    const four = Array.from({ length: 4 }, () => '{size: 100 x 100}').join(', ');
    const made = boxes(must(job(four, 'arrange: {columns: 2, fill: true}\nmat: {outer: 290 x 320}')));
    expect(made.map((b) => b.x)).toEqual([30, 160, 30, 160]);
    expect(made.map((b) => b.y)).toEqual([40, 40, 180, 180]);
  });

  it('rows are weighted like a mat: a length added, or a ratio', () => {
    const six = Array.from({ length: 3 }, () => '{size: 100 x 100}').join(', ');
    const tops = (weighting: string) =>
      boxes(must(job(six, `arrange: {columns: 1, gap: 20, rowWeighting: ${weighting}}\nmat: {border: 50}`))).map(
        (b) => b.y,
      );
    expect(tops('{add: 7}')).toEqual([50, 177, 304]);
    expect(tops('{ratio: 3/2}')).toEqual([50, 180, 310]);
  });

  it('an opening has its own place, or lies below another', () => {
    const made = boxes(
      must(
        job(
          '{name: A, size: 100 x 120, place: {left: 40, top: 30}}, {name: B, size: 60 x 20, place: {below: A, gap: 25}}, {size: 80 x 60, place: {right: 20}}',
          'mat: {outer: 400 x 300}',
        ),
      ),
    );
    expect(made.map(({ x, y }) => [x, y])).toEqual([
      [40, 30],
      [60, 175],
      [300, 120],
    ]);
  });

  it('spacing is measured on the face of the top mat, whatever lies below it', () => {
    const made = boxes(
      must(
        job(
          '{size: 100 x 120}, {size: 100 x 120}',
          'arrange: {rows: 1, gap: 40}\nmat: {border: 50, layers: [{board: b}, {board: b, reveal: 6}]}',
        ),
      ),
    );
    expect(made[0]).toEqual({ x: 50, y: 50, width: 112, height: 132 });
    expect(made[1]!.x).toBe(202);
  });

  it.each([
    ['45', 0],
    ['{angle: 45, reverse: true}', 1.5],
    ['{angle: 60, reverse: true}', 1.5 / Math.sqrt(3)],
  ])('a layer that is skipped hides 3 mm behind all of the bevel above it: %s', (bevel, reach) => {
    const mat = must(
      `units: mm\nmat: {border: 60, layers: [{board: {thickness: 1.5 mm}, bevel: ${bevel}}, {board: {thickness: 1.2 mm}, reveal: 6, bevel: 45}]}\nopenings: [{size: 100 x 120, reveals: [skip]}]\nbench: {stack: apart}\n`,
    );
    const [top, under] = mat.openings[0]!.layers;
    expect(under!.hidden).toBe(true);
    // The farthest edge of the top mat is its back where the bevel is reversed; the nearest of the under mat its own back.
    expect(top!.faceBox.x - under!.backBox.x).toBeCloseTo(reach + 3, 9);
    expect(under!.backBox.x - under!.faceBox.x).toBeCloseTo(1.2, 9);
    expect(mat.openings[0]!.sight.width).toBeCloseTo(bevel === '45' ? 100 - 3 : 100, 9);
  });

  it('reveals may differ by side, an opening may have its own, and skip a layer', () => {
    const mat = must(
      job(
        '{size: 100 x 120}, {size: 100 x 120, reveals: [{top: 5, sides: 5, bottom: 12}]}, {size: 100 x 120, reveals: [skip]}',
        'arrange: {rows: 1, gap: 60}\nmat: {border: 50, layers: [{board: b}, {board: b, reveal: {top: 6, sides: 7, bottom: 8}}]}',
      ),
    );
    const [first, second, third] = mat.openings.map(({ layers }) => layers);
    expect(first![1]!.reveal).toEqual({ top: 6, right: 7, bottom: 8, left: 7 });
    expect(first![0]!.faceBox).toMatchObject({ width: 114, height: 134 });
    expect(second![0]!.faceBox).toMatchObject({ width: 110, height: 137 });
    expect(third![0]!.faceBox).toMatchObject({ width: 100, height: 120 });
    // The under mat keeps 3 mm behind the top mat's edge; its back is its own setback farther in.
    expect(third![1]!.hidden).toBe(true);
    expect(third![1]!.backBox.width).toBeCloseTo(106, 9);
    expect(mat.openings[2]!.sight.width).toBeCloseTo(100 - 2 * 1.4, 9);
  });

  it('a circle on an oblong artwork is settled by the shorter side', () => {
    for (const artwork of ['100 x 140', '140 x 100']) {
      const [circle] = must(job(`{shape: circle, artwork: ${artwork}}`, 'mat: {border: 50}')).openings;
      expect(circle!.layers[0]!.faceBox).toMatchObject({ width: 88, height: 88 });
      expect(Math.min(...Object.values(circle!.artwork!.overlap))).toBeCloseTo(7.4, 9);
    }
  });
});
