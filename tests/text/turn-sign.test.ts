import { describe, expect, it } from 'vitest';
import type { PathItem } from '../../src/drawing/model.ts';
import { turnBlock } from '../../src/text/signs.ts';
import { TEXT } from '../../src/text/styles.ts';

interface P {
  readonly x: number;
  readonly y: number;
}

/** Degrees from `a` to `b` about a centre, positive clockwise to the eye, y running down. */
const angle = (centre: P, a: P, b: P): number => {
  const [u, v] = [
    { x: a.x - centre.x, y: a.y - centre.y },
    { x: b.x - centre.x, y: b.y - centre.y },
  ];
  return (Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y) * 180) / Math.PI;
};

describe('the sign of a turn', () => {
  it.each([
    [true, 1],
    [false, -1],
  ])('clockwise %s: the shaft runs that way round to the head, whose tip lies ahead of it', (clockwise, sign) => {
    const [shaft, head] = turnBlock(clockwise, TEXT).items as readonly PathItem[];
    const { start, segments } = shaft!.paths[0]!;
    const [arc] = segments;
    if (arc?.kind !== 'arc') throw new Error('the shaft is an arc');
    expect(arc.clockwise).toBe(clockwise);
    // It goes most of the way round, 110 to 350 degrees: the short way from its end back to its start is 120.
    expect(angle(arc.centre, arc.to, start)).toBeCloseTo(120 * sign, 6);
    const tip = head!.paths[0]!.start;
    expect(Math.sign(angle(arc.centre, arc.to, tip))).toBe(sign);
    const corners = head!.paths[0]!.segments.map(({ to }) => to).filter(
      (p) => Math.hypot(p.x - tip.x, p.y - tip.y) > 1e-9,
    );
    expect(corners).toHaveLength(2);
    for (const corner of corners) expect(Math.sign(angle(arc.centre, corner, tip))).toBe(sign);
  });
});
