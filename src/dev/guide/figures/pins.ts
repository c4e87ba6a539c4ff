import { point } from '../../../geometry/point.ts';
import { pinsAndLoop } from '../../../shapes/by-hand.ts';
import { oval } from '../../../shapes/oval.ts';
import { label, measure, sketch, stroke } from '../sketch.ts';

const [WIDTH, HEIGHT, X, Y] = [100, 80, 20, 10];

/** An oval of 10 × 8, its pins, and the thread about them and the pencil. */
export function pins() {
  const { pin } = pinsAndLoop(WIDTH, HEIGHT);
  const middle = point(X + WIDTH / 2, Y + HEIGHT / 2);
  const [left, right] = [point(middle.x - pin, middle.y), point(middle.x + pin, middle.y)];
  const turn = -0.9;
  const pencil = point(middle.x + (WIDTH / 2) * Math.cos(turn), middle.y + (HEIGHT / 2) * Math.sin(turn));
  const dot = (at: typeof left) => stroke('bold', point(at.x - 0.8, at.y), point(at.x + 0.8, at.y));
  return sketch('Pins and loop', 150, 106, [
    { kind: 'path', pen: 'line', paths: [oval.outline({ x: X, y: Y, width: WIDTH, height: HEIGHT })] },
    stroke('axis', point(X - 8, middle.y), point(X + WIDTH + 8, middle.y)),
    stroke('axis', point(middle.x, Y - 6), point(middle.x, Y + HEIGHT + 6)),
    stroke('wrong', left, right, pencil, left),
    dot(left),
    dot(right),
    label('pencil', pencil.x + 2, pencil.y - 1),
    label('pin', left.x, left.y + 5, { anchor: 'middle' }),
    label('pin', right.x, right.y + 5, { anchor: 'middle' }),
    ...measure(point(middle.x, middle.y + 12), point(right.x, middle.y + 12), '3', point(0, 5)),
    label('red: the loop of thread, 16 all round, on an oval of 10 × 8', X - 8, Y + HEIGHT + 13, { wrong: true }),
  ]);
}
