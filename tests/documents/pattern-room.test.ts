import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pattern } from '../../src/documents/pattern/pattern.ts';
import type { FullScale } from '../../src/drawing/full-scale.ts';
import type { Drawing, TextItem } from '../../src/drawing/model.ts';
import { textBox } from '../../src/fonts/measure.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { groupJob, groupShop } from '../mat/random-groups.ts';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Sampled along the line, so that nothing of the engine's own clipping is used. */
function lineMeets(from: { x: number; y: number }, to: { x: number; y: number }, rect: Rect): boolean {
  const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 0.5) + 1;
  for (let i = 0; i <= steps; i++) {
    const x = from.x + ((to.x - from.x) * i) / steps;
    const y = from.y + ((to.y - from.y) * i) / steps;
    if (x > rect.x && x < rect.x + rect.width && y > rect.y && y < rect.y + rect.height) return true;
  }
  return false;
}

const texts = (drawing: Drawing): readonly TextItem[] =>
  drawing.groups.flatMap((group) => group.items.filter((item): item is TextItem => item.kind === 'text'));

function faults({ drawing, board }: FullScale): readonly string[] {
  const found: string[] = [];
  const words = texts(drawing).map((item) => ({ item, box: textBox(item, FONTS) }));
  for (const [i, { item, box }] of words.entries()) {
    for (const other of words.slice(i + 1)) {
      const apart =
        box.x >= other.box.x + other.box.width - 0.01 ||
        other.box.x >= box.x + box.width - 0.01 ||
        box.y >= other.box.y + other.box.height - 0.01 ||
        other.box.y >= box.y + box.height - 0.01;
      // Lines of one block may touch with their descenders.
      if (!apart && !sameBlock(item, other.item)) found.push(`"${item.text}" on "${other.item.text}"`);
    }
    for (const group of drawing.groups) {
      for (const mark of group.items) {
        if (mark.kind === 'line' && lineMeets(mark.from, mark.to, box)) found.push(`"${item.text}" on ${mark.id}`);
        if (mark.kind !== 'path' || mark.pen === undefined) continue;
        for (const points of mark.paths.map((path) => flattened(path, 0.02))) {
          const over = points.some((p, k) => k > 0 && lineMeets(points[k - 1]!, p, box));
          if (over) found.push(`"${item.text}" on ${mark.id}`);
        }
      }
    }
    if (
      board === undefined ||
      box.x < board.x ||
      box.y < board.y ||
      box.x + box.width > board.x + board.width ||
      box.y + box.height > board.y + board.height
    ) {
      found.push(`"${item.text}" beyond the board`);
    }
  }
  return found;
}

const sameBlock = (a: TextItem, b: TextItem): boolean =>
  a.turn === b.turn && Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y) < 2 * Math.max(a.size, b.size);

const jobs = fc
  .record({
    width: fc.integer({ min: 150, max: 1000 }),
    height: fc.integer({ min: 150, max: 1000 }),
    side: fc.integer({ min: 12, max: 45 }),
    top: fc.integer({ min: 12, max: 45 }),
    bottom: fc.integer({ min: 12, max: 45 }),
    layers: fc.integer({ min: 1, max: 3 }),
    hand: fc.constantFrom('left', 'right'),
    straightedge: fc.constantFrom(0, 31),
    title: fc.constantFrom('Heron', 'Heron, linocut, from the travelling show of the print room', 'Чапля – λίμνη'),
  })
  .map((r) => {
    const part = (percent: number, whole: number) => Math.round((percent * whole) / 100) / 2 + 12;
    const layers = Array.from({ length: r.layers }, (_, i) => (i === 0 ? '{board: b}' : '{board: b, reveal: 6}')).join(
      ', ',
    );
    return {
      job: `
title: "${r.title}"
units: mm
mat: {outer: ${r.width} x ${r.height}, border: {sides: ${part(r.side, r.width)}, top: ${part(r.top, r.height)}, bottom: ${part(r.bottom, r.height)}}, layers: [${layers}]}
openings: [{}]
bench: {head: h}
`,
      shop: `
boards: {b: {thickness: 1.4 mm, name: Bone}}
heads: {h: {bevel: 45, opening: ${r.hand}, straightedge: ${r.straightedge} mm, start: 1.2 mm, stop: -0.4 mm}}
`,
    };
  });

describe('room on the pattern', () => {
  it('sets no word on another, on a line or beyond the board', () => {
    let drawn = 0;
    fc.assert(
      fc.property(jobs, ({ job, shop }) => {
        const solved = solveJob(job, { fonts: FONTS, file: 'job.yaml', shop: { text: shop, file: 'shop.yaml' } });
        if (!solved.ok) return;
        drawn++;
        const { mat, strokes, job: read } = solved.value;
        for (const [layer] of mat.layers.entries()) {
          const made = pattern(mat, strokes, read, layer, { fonts: FONTS });
          const { drawing } = made;
          expect(faults(made)).toEqual([]);
          const numbers = texts(drawing).filter((item) => item.weight === 'bold' && /^\d+$/u.test(item.text));
          expect(numbers.map((item) => item.text).sort()).toEqual(
            strokes
              .filter((s) => s.layer === layer + 1)
              .map((s) => String(s.order))
              .sort(),
          );
        }
      }),
      { numRuns: 60, seed: 7 },
    );
    expect(drawn).toBeGreaterThan(40);
  });

  it('holds with several openings of every shape; every stroke has its number, beside it or led to it', () => {
    let drawn = 0;
    fc.assert(
      fc.property(groupJob, fc.constantFrom('left', 'right'), ({ text }, hand) => {
        const solved = solveJob(text, {
          fonts: FONTS,
          file: 'job.yaml',
          shop: { text: groupShop(hand), file: 'shop.yaml' },
        });
        if (!solved.ok) return;
        const { mat, strokes, job } = solved.value;
        const made = pattern(mat, strokes, job, 0, { fonts: FONTS });
        drawn++;
        expect(faults(made)).toEqual([]);
        const own = strokes.filter((s) => s.layer === 1);
        const lost = made.warnings.filter(({ message }) => message.includes('reading of stroke'));
        const numbers = texts(made.drawing).filter((item) => item.weight === 'bold' && /^\d+$/u.test(item.text));
        expect(numbers.length + lost.length).toBe(own.length);
        // Each curve is said to be cut by template or machine.
        const curved = mat.openings.filter(({ layers }) => layers[0]!.face.segments.some((s) => s.kind !== 'line'));
        const said = texts(made.drawing).filter((item) => item.text.includes('by template or machine'));
        const unsaid = made.warnings.filter(({ message }) => message.includes('hand work'));
        expect(said.length + unsaid.length).toBe(curved.length);
        lostInAll += lost.length + unsaid.length;
        strokesInAll += own.length;
      }),
      { numRuns: 30, seed: 11 },
    );
    expect(drawn).toBeGreaterThan(12);
    // Words are lost on crowded sheets alone, and seldom there.
    expect(lostInAll / strokesInAll).toBeLessThan(0.02);
  });

  it('of a crowded sheet: every side its number, starts and ends told by their dashes where letters find no room', () => {
    const many = (count: number, width: number, height: number, gap: number): string =>
      `units: mm\nmat: {border: 40}\nopenings: [${Array.from({ length: count }, (_, i) => `{name: n${i + 1}, size: ${width} x ${height}}`).join(', ')}]\narrange: {columns: 12, gap: ${gap}}\n`;
    const drawn = (text: string) => {
      const solved = solveJob(text);
      if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
      const { mat, strokes, job } = solved.value;
      return { ...pattern(mat, strokes, job, 0, { fonts: FONTS }), count: strokes.length };
    };
    for (const [width, height, gap] of [
      [55, 65, 15],
      [42, 36, 12],
    ] as const) {
      const made = drawn(many(72, width, height, gap));
      const { drawing, warnings, count, legend } = made;
      expect(warnings.map(({ code }) => code).filter((code) => code === 'label-without-room')).toEqual([]);
      expect(faults(made)).toEqual([]);
      const numbers = texts(drawing).filter((item) => item.weight === 'bold' && /^\d+$/u.test(item.text));
      expect(new Set(numbers.map((item) => item.text)).size).toBe(count);
      const ticks = drawing.groups
        .find(({ name }) => name === 'marks')!
        .items.flatMap((item) => (item.kind === 'line' ? [[item.id!.split('-')[0], item.pen]] : []));
      expect(ticks.filter(([end, pen]) => (end === 'stop') !== (pen === 'end'))).toEqual([]);
      expect(ticks.length).toBe(2 * count);
      expect(legend.map(({ pen }) => pen)).toContain('end');
    }
  });
});

let lostInAll = 0;
let strokesInAll = 0;
