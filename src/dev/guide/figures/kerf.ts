import { point } from '../../../geometry/point.ts';
import { area, BOARD, box4, label, measure, sketch, stroke } from '../sketch.ts';

const [KERF, X, Y] = [6, 14, 12];

/** A mat under a beam that is drawn six millimetres wide: what it takes, and where its middle runs. */
export function kerf() {
  const ring = (inset: number) => box4(X + inset, Y + inset, 110 - 2 * inset, 56 - 2 * inset);
  const half = KERF / 2;
  const opening = 14;
  const outline = (inset: number, name: 'axis' | 'line') => stroke(name, ...ring(inset), ring(inset)[0]!);
  return sketch('Kerf by role', 168, 84, [
    area('#f2c4bf', ring(-KERF)),
    area(BOARD, ring(0)),
    area('#f2c4bf', ring(opening)),
    area(1, ring(opening + KERF)),
    outline(0, 'line'),
    outline(opening, 'line'),
    outline(-half, 'axis'),
    outline(opening + half, 'axis'),
    label('mat', X + 12, Y + 14),
    label('fallout', X + 55, Y + 29, { anchor: 'middle' }),
    ...measure(point(X + 110, Y + 8), point(X + 110 + KERF, Y + 8), 'kerf k', point(7, 0)),
    label('outside: the path', X + 124, Y + 22),
    label('grows by k/2', X + 124, Y + 27),
    label('opening: the path', X + 124, Y + 38),
    label('shrinks by k/2', X + 124, Y + 43),
    stroke('fine', point(X + 123, Y + 21), point(X + 110 + half, Y + 21)),
    stroke('fine', point(X + 123, Y + 37), point(X + 110 - opening - half, Y + 30)),
    label('red: what the beam burns away', X, Y + 68, { wrong: true }),
  ]);
}
