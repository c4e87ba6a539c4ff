import { describe, expect, it } from 'vitest';
import { build, prepare, solveJob } from '../../src/index.ts';
import { plot } from '../readers/hpgl.ts';
import { cut, LOPSIDED } from './cut.ts';
import { waysOf } from './read-svg.ts';

const TWO = LOPSIDED.replace(
  'bevel: 90}]',
  'bevel: 90}, {board: {name: slate, thickness: 1.5}, reveal: 6, trimBack: 5, bevel: 90}]',
);
const shop = (text: string): string => `units: mm\nmachines: {m: {${text}}}\n`;

/** What is drawn under a name, all its strokes. */
const ways = (svg: string, id: string) => waysOf(svg).filter((way) => way.id === id);

/** Left, top, right and bottom of it. */
function box(svg: string, id: string): readonly [number, number, number, number] {
  const points = ways(svg, id).flatMap((way) => way.points);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const round = (n: number): number => Math.round(n * 1000) / 1000;
  return [round(Math.min(...xs)), round(Math.min(...ys)), round(Math.max(...xs)), round(Math.max(...ys))];
}

describe('where a blank lies that is cut to size before', () => {
  it('is told by its outline and TOP, on the layer that no tool cuts', async () => {
    const { texts } = await cut(TWO, shop('kind: laser, outside: false, bed: 600 x 500'), {});
    expect(texts).toHaveLength(2);
    // 33 + 192 + 47 by 61 + 252 + 89 at the lower left corner of the bed; the under mat 10 less each way.
    expect(box(texts[0]!, 'blank-1')).toEqual([0, 98, 272, 500]);
    expect(box(texts[1]!, 'blank-2')).toEqual([0, 108, 262, 500]);
    for (const id of ['blank-1', 'top-1', 'words-1-1'])
      expect(ways(texts[0]!, id).map(({ layer }) => layer)).toEqual(ways(texts[0]!, id).map(() => 'note'));
    const [left, top, right, bottom] = box(texts[0]!, 'top-1');
    expect([left > 0, top > 98, right < 40, bottom < 108]).toEqual([true, true, true, true]);
  });

  it('turns with the blank, TOP too', async () => {
    const { texts } = await cut(LOPSIDED, shop('kind: laser, outside: false, bed: 600 x 500'), { turn: true });
    expect(box(texts[0]!, 'blank-1')).toEqual([0, 240, 390, 500]);
    // The top edge lies to the right.
    const [left] = box(texts[0]!, 'top-1');
    expect(left).toBeGreaterThan(380);
  });

  it('is not drawn where the machine cuts the outside, or wants no notes', async () => {
    const outside = (await cut(LOPSIDED, shop('kind: laser'), {})).texts[0]!;
    const bare = (await cut(LOPSIDED, shop('kind: laser, outside: false, notes: false'), {})).texts[0]!;
    for (const text of [outside, bare]) expect(text).not.toContain('blank-1');
  });

  it('is a drawing of its own beside what a plotter gets, which has nothing of it', async () => {
    const machine = shop('kind: knife, outside: false, marks: false, format: hpgl, bed: 600 x 500');
    const { names, texts } = await cut(LOPSIDED, machine, {});
    expect(names).toEqual(['cut-m-1.plt', 'cut-m-1-bed.svg']);
    expect(box(texts[1]!, 'blank-1')).toEqual([0, 110, 260, 500]);
    expect(texts[1]).toContain('opening-1-1');
    for (const { points } of plot(texts[0]!).lines)
      for (const [x, y] of points)
        expect([x > 40, y > 40, x < 259 * 40, y < 389 * 40]).toEqual([true, true, true, true]);
  });

  it('is said for each board, counted from the lower left of the bed', async () => {
    const solved = solveJob(TWO, {
      shop: { text: shop('kind: laser, bed: 700 x 500, gap: 10, kerf: 0'), file: 'shop.yaml' },
    });
    if (!solved.ok) throw new Error('no good job');
    const made = await prepare('cutfile', { jobs: [solved.value] }, { together: true });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(made.value.drawn.drawings[0]!.more.slice(1)).toEqual([
      'top mat: 0 mm from the left of the bed, 0 mm from its lower end, TOP up',
      'under mat 1: 282 mm from the left of the bed, 0 mm from its lower end, TOP up',
    ]);
  });

  it('is not wished twice: --turn is for a file for each board', async () => {
    const made = await build(TWO, { documents: ['cutfile'], machine: 'laser', together: true, turn: true });
    expect(made.ok ? [] : made.problems.map(({ code }) => code)).toEqual(['turn-together']);
  });
});
