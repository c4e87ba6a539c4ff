import type { Item } from '../../../drawing/model.ts';
import { type Point, point } from '../../../geometry/point.ts';
import { area, arrow, BOARD, box4, CORE, heading, label, sketch, stroke } from '../sketch.ts';

/** The lower left corner of an opening, from the face: the board, the bevel's core, and what is seen below. */
function corner(x: number, title: string, bevel = 4): readonly Item[] {
  const [cx, cy] = [x + 24, 46];
  const [right, top] = [x + 66, 14];
  return [
    heading(title, x, 8),
    area(BOARD, [point(x, top), point(cx, top), point(cx, cy), point(right, cy), point(right, 62), point(x, 62)]),
    area(CORE, [point(cx, top), point(cx, cy), point(cx + bevel, cy - bevel), point(cx + bevel, top)], 'fine'),
    area(CORE, [point(cx, cy), point(right, cy), point(right, cy - bevel), point(cx + bevel, cy - bevel)], 'fine'),
    stroke('line', point(cx, top), point(cx, cy), point(right, cy)),
  ];
}

const at = (x: number): Point => point(x + 24, 46);

export function overcut() {
  const c = at(94);
  return sketch('Overcut', 170, 70, [
    corner(6, 'clean'),
    corner(94, 'overcut'),
    stroke('wrong', c, point(c.x, c.y + 7)),
    stroke('wrong', c, point(c.x - 7, c.y)),
    label('past the corner', c.x + 4, c.y + 8, { wrong: true }),
  ]);
}

export function undercut() {
  const c = at(94);
  return sketch('A fallout that hangs', 170, 70, [
    corner(6, 'clean'),
    corner(94, 'hangs by its corners'),
    area(BOARD, [c, point(c.x, c.y - 6), point(c.x + 4, c.y - 6), point(c.x + 6, c.y - 4), point(c.x + 6, c.y)]),
    stroke('wrong', point(c.x, c.y - 6), point(c.x + 4, c.y - 6), point(c.x + 6, c.y - 4), point(c.x + 6, c.y)),
    label('not cut', c.x + 9, c.y - 7, { wrong: true }),
  ]);
}

/** The blade came in beside the line and found it later. */
export function hook() {
  const c = at(94);
  const bent = (dx: number, dy: number): Item => ({
    kind: 'path',
    pen: 'wrong',
    paths: [
      {
        start: point(c.x + dx, c.y + dy),
        segments: [{ kind: 'cubic', c1: point(c.x + dx, c.y - 6), c2: point(c.x, c.y - 9), to: point(c.x, c.y - 16) }],
        closed: false,
      },
    ],
  });
  return sketch('Hook', 170, 70, [
    corner(6, 'clean'),
    corner(94, 'hook'),
    bent(3.4, 0),
    label('the cut comes in', c.x + 8, c.y - 16, { wrong: true }),
    label('beside its line', c.x + 8, c.y - 11.5, { wrong: true }),
  ]);
}

/** The core as a band along one side: of one width, and of two. */
export function wanderingBevel() {
  const band = (x: number, title: string, first: number, last: number): readonly Item[] => [
    heading(title, x, 8),
    area(BOARD, box4(x, 12, 66, 22)),
    area(
      CORE,
      [point(x, 34), point(x + 66, 34), point(x + 66, 34 + last), point(x, 34 + first)],
      first === last ? 'fine' : 'wrong',
    ),
  ];
  return sketch('Bevel', 170, 48, [band(6, 'even', 5, 5), band(94, 'wanders', 7, 3.2)]);
}

/** The opening that was meant, and the one that was cut: every border too wide by the same amount. */
export function constantOffset() {
  const off = 2.4;
  return sketch('Off by the same amount everywhere', 150, 74, [
    area(BOARD, box4(8, 8, 90, 60), 'line'),
    area(CORE, box4(28 + off, 24 + off, 50 - 2 * off, 28 - 2 * off)),
    stroke('hidden', ...box4(28, 24, 50, 28), point(28, 24)),
    stroke('wrong', ...box4(28 + off, 24 + off, 50 - 2 * off, 28 - 2 * off), point(28 + off, 24 + off)),
    ...arrow(point(104, 30), point(79, 30), 'fine'),
    label('meant', 106, 31),
    ...arrow(point(104, 42), point(76.5, 42), 'wrong'),
    label('cut', 106, 43, { wrong: true }),
  ]);
}
