import { dot, minus, type Point } from '../geometry/point.ts';
import type { Stroke } from './model.ts';

/**
 * What a stroke of a reverse bevel leaves uncut at the back, at either end: from where it ends clean on the face, its
 * overrun counted, out to the corner on the back, which lies a setback further out. `scale`: the line of a pattern that is
 * cut through lies on its paper, a little further out than the board's own.
 */
export function uncutEnds(
  { face, line, direction, reverse }: Pick<Stroke, 'face' | 'line' | 'direction' | 'reverse'>,
  scale: number,
  overrun: number,
): Stroke['uncut'] {
  if (!reverse) return undefined;
  const end = (from: Point, to: Point): number => Math.max(0, dot(minus(to, from), direction) * scale - overrun);
  const [start, stop] = [end(line.from, face.from), end(face.to, line.to)];
  return start + stop > 0 ? { start, stop } : undefined;
}

/** The most that any stroke of a layer, counted from 1, leaves uncut at an end; 0 where none does. */
export const mostUncut = (strokes: readonly Stroke[], layer: number): number =>
  Math.max(
    0,
    ...strokes
      .filter((s) => s.layer === layer && s.cut !== true)
      .flatMap(({ uncut }) => [uncut?.start ?? 0, uncut?.stop ?? 0]),
  );

/** Below this nothing is freed: a knife finds no more to do there, mm. */
export const LEAST_FREED = 0.05;
