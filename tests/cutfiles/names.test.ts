import { describe, expect, it } from 'vitest';
import { readSvg } from '../readers/svg-elements.ts';
import { cut, LOPSIDED } from './cut.ts';

const shop = (more: string): string =>
  `units: mm\nmachines: {knife: {offset: 0.25, format: svg, marks: false${more}}}\n`;

async function named(more: string) {
  const { texts } = await cut(LOPSIDED, shop(more), { machine: 'knife' });
  const { paths, lines } = readSvg(texts[0]!);
  return [
    ...paths.map(({ attributes, segments }) => ({
      id: attributes.id ?? '',
      from: segments[0]!.from,
      to: segments.at(-1)!.to,
    })),
    ...lines.map(({ attributes, from, to }) => ({ id: attributes.id ?? '', from, to })),
  ];
}

const cutOnly = (found: Awaited<ReturnType<typeof named>>): readonly string[] =>
  found.map(({ id }) => id).filter((id) => !id.startsWith('reference'));

describe('the names of ways in a file', () => {
  it('number the passes only where there are several', async () => {
    expect(cutOnly(await named(', notes: false'))).toEqual(['opening-1-1', 'outside-1']);
    const several = cutOnly(await named(', notes: false, passes: 2'));
    expect([...several].sort()).toEqual([
      'opening-1-1-pass-1',
      'opening-1-1-pass-2',
      'outside-1-pass-1',
      'outside-1-pass-2',
    ]);
  });

  it('say which line is the one to measure: 100 mm between two ends that are 4 mm high', async () => {
    const notes = (await named('')).filter(({ id }) => id.startsWith('reference'));
    const of = (id: string) => notes.find((each) => each.id === id)!;
    const { from, to } = of('reference');
    expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(100, 6);
    expect(to.y).toBeCloseTo(from.y, 6);
    for (const [id, at] of [
      ['reference-start', from],
      ['reference-end', to],
    ] as const) {
      const { from: a, to: b } = of(id);
      expect([a.x, b.x].map((x) => Math.abs(x - at.x) < 1e-6)).toEqual([true, true]);
      expect([Math.min(a.y, b.y), Math.max(a.y, b.y)].map((y) => Math.round((y - at.y) * 1e6) / 1e6)).toEqual([-2, 2]);
    }
  });
});
