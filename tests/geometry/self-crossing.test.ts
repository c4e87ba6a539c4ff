import { describe, expect, it } from 'vitest';
import { selfCrossing } from '../../src/geometry/meetings.ts';
import type { Path } from '../../src/geometry/path.ts';

describe('where an outline crosses itself', () => {
  it('is found though two of its curves leave a point together, which takes long to look through', () => {
    const [from, c1, c2, to] = [
      { x: 157.4, y: 53.5 },
      { x: 25, y: 67.2 },
      { x: 88.5, y: 82.112 },
      { x: 169.9, y: 103.8 },
    ];
    const path: Path = {
      start: { x: 182.7, y: 53.5 },
      closed: true,
      segments: [
        { kind: 'line', to: from },
        { kind: 'cubic', c1, c2, to },
        { kind: 'cubic', c1: { x: 251.3, y: 125.488 }, c2: { x: 85, y: 150.2 }, to: { x: 50.3, y: 150.4 } },
        { kind: 'line', to: { x: 182.7, y: 53.5 } },
      ],
    };
    const started = process.cpuUsage();
    const at = selfCrossing(path)!;
    const { user, system } = process.cpuUsage(started);
    // On the closing side, which runs from 50.3 150.4 to 182.7 53.5 …
    expect((at.x - 50.3) * (53.5 - 150.4) - (at.y - 150.4) * (182.7 - 50.3)).toBeCloseTo(0, 3);
    // … and on the first curve, by samples of it.
    const samples = Array.from({ length: 20_001 }, (_, i) => {
      const [t, s] = [i / 20_000, 1 - i / 20_000];
      const mix = (k: 'x' | 'y'): number =>
        s ** 3 * from[k] + 3 * s * s * t * c1[k] + 3 * s * t * t * c2[k] + t ** 3 * to[k];
      return Math.hypot(mix('x') - at.x, mix('y') - at.y);
    });
    expect(Math.min(...samples)).toBeLessThan(0.01);
    expect((user + system) / 1000).toBeLessThan(300);
  });

  it('is at the same place of an outline whose numbers are enormous', () => {
    const of = (scale: number, bent: number): Path => {
      const p = (x: number, y: number) => ({ x: x * scale, y: y * scale });
      return {
        start: p(0, 0),
        closed: true,
        segments: [
          { kind: 'cubic', c1: p(3.1, bent), c2: p(-2, 2), to: p(1.7, 2) },
          { kind: 'cubic', c1: p(3, 5), c2: p(-1, 0.1), to: p(0, 0) },
        ],
      };
    };
    for (const bent of [0.1, 0.2, 0.3, 0.4, 0.5]) {
      const known = selfCrossing(of(100, bent))!;
      for (const scale of [1e9, 3e10, 2e11, 1e15, 1e100]) {
        const { x, y } = selfCrossing(of(scale, bent))!;
        expect(x / scale).toBeCloseTo(known.x / 100, 6);
        expect(y / scale).toBeCloseTo(known.y / 100, 6);
      }
    }
  });
});
