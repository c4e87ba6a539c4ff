import { type Box, centre } from '../geometry/box.ts';
import { type Path, polygon } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { lengthOf, parallelBy } from './parallels.ts';
import type { Fields, Shape } from './shape.ts';

/** Corners on a circle of radius 1 about 0 0, clockwise, from the topmost (of two, the left one). */
function corners(fields: Fields): readonly Point[] {
  const count = lengthOf(fields, 'sides', 6);
  const step = (2 * Math.PI) / count;
  // Standing on a side, the lowest side is level; standing on a corner, the lowest corner is straight below.
  const low = fields.stands === 'corner' ? 0 : step / 2;
  const all = Array.from({ length: count }, (_, i) => {
    const angle = Math.PI / 2 + low + i * step;
    return { x: Math.cos(angle), y: Math.sin(angle) };
  });
  const first = all.reduce(
    (best, p, i) => (p.y < all[best]!.y - 1e-9 || (p.y < all[best]!.y + 1e-9 && p.x < all[best]!.x) ? i : best),
    0,
  );
  return [...all.slice(first), ...all.slice(0, first)];
}

function spanOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

function outline(frame: Box, fields: Fields = {}): Path {
  const points = corners(fields);
  const span = spanOf(points);
  const scale = (frame.width / span.width + frame.height / span.height) / 2;
  const [middle, own] = [centre(frame), centre(span)];
  return polygon(points.map((p) => ({ x: middle.x + (p.x - own.x) * scale, y: middle.y + (p.y - own.y) * scale })));
}

export const regular: Shape = {
  about: 'a regular polygon',
  fields: {
    sides: { kind: 'count', about: 'How many sides', examples: [6, 8], least: 3, most: 24 },
    stands: {
      kind: 'choice',
      about: 'What is lowest: a level side or a corner',
      words: ['side', 'corner'],
      usual: 'side',
    },
  },
  outline,
  parallel: parallelBy(outline),
  growsUnevenly: true,
  aspect: (fields) => {
    const span = spanOf(corners(fields));
    return span.width / span.height;
  },
  reveals: 'alike',
};
