import { describe, expect, it } from 'vitest';
import { cut, LOPSIDED } from './cut.ts';
import { waysOf } from './read-svg.ts';

const LINES = LOPSIDED.replace(
  '240}]',
  '240, lines: [{kind: ink, distance: 10}, {kind: ink, distance: 12, sides: [top, left]}, {kind: groove, distance: 20}]}]',
);
const shop = (text: string): string => `units: mm\nmachines: {m: {${text}}}\n`;

const drawn = async (machine: string) => {
  const { texts, built } = await cut(LINES, shop(machine), {});
  const ink = waysOf(texts[0]!)
    .filter(({ id }) => id.startsWith('ink-'))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const told = built.warnings
    .filter(({ code }) => code === 'decor-by-hand')
    .map(({ message, hint }) => `${message}; ${hint}`);
  return { ink, told };
};

/** The opening of 180 × 240 lies 33 from the left of the face and 61 from its top. */
const around = (by: number) => [33 - by, 61 - by, 33 + 180 + by, 61 + 240 + by];

describe('ink lines', () => {
  it.each([
    ['kind: knife, up: face, outside: false, format: svg', 'ink'],
    ['kind: laser, up: face, outside: false, kerf: 0', 'score'],
  ])('are drawn by %s on its layer %s, where the face lies up', async (machine, layer) => {
    const { ink, told } = await drawn(machine);
    expect(ink.map(({ id, layer: own, closed }) => [id, own, closed])).toEqual([
      ['ink-1-1', layer, true],
      ['ink-1-2', layer, false],
    ]);
    const box = (points: readonly { readonly x: number; readonly y: number }[]) => {
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(
        (n) => Math.round(n * 1000) / 1000,
      );
    };
    // Parallels have round corners outside: the line's sides lie as far out as asked.
    expect(box(ink[0]!.points)).toEqual(around(10));
    expect(box(ink[1]!.points).slice(0, 2)).toEqual(around(12).slice(0, 2));
    expect(told).toEqual(['the grooves of this opening are not in the file for m; lay them out by the pattern']);
  });

  it('are left to the hand where the back lies up, or the machine has nothing to draw with', async () => {
    const back = await drawn('kind: laser, outside: false');
    expect(back.ink).toEqual([]);
    expect(back.told).toEqual([
      'the grooves and ink lines of this opening are not in the file for m; lay them out by the pattern; with up: face the machine draws ink lines',
    ]);
    const head = await drawn('kind: bevel, up: face, bevel: 90, outside: false, format: svg');
    expect([head.ink, head.told]).toEqual([
      [],
      ['the grooves and ink lines of this opening are not in the file for m; lay them out by the pattern'],
    ]);
  });
});
