import { arcCubics } from '../geometry/arc-cubics.ts';
import type { Box } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { type Path, placedSegment, type Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { parallelBy } from './parallels.ts';
import type { Fields, Shape } from './shape.ts';

const EMPTY: Path = { start: { x: 0, y: 0 }, segments: [], closed: true };

const pathOf = (fields: Fields): Path => {
  const path = fields.outline;
  return typeof path === 'object' ? path : EMPTY;
};

/** The given outline stretched to fill the frame; arcs stay arcs where both directions are stretched alike. */
function outline(frame: Box, fields: Fields = {}): Path {
  const path = pathOf(fields);
  const own = pathBox(path);
  const [sx, sy] = [frame.width / own.width, frame.height / own.height];
  const place = (p: Point): Point => ({ x: frame.x + (p.x - own.x) * sx, y: frame.y + (p.y - own.y) * sy });
  const even = Math.abs(sx - sy) <= 1e-9 * sx;
  let from = path.start;
  const segments = path.segments.flatMap((segment): Segment[] => {
    const made = segment.kind === 'arc' && !even ? arcCubics(from, segment, 0.0002 / Math.max(sx, sy, 1)) : [segment];
    from = segment.to;
    return made.map((each) => placedSegment(each, place));
  });
  return { start: place(path.start), segments, closed: true };
}

export const free: Shape = {
  about: 'any outline of straight lines, arcs and curves',
  fields: {
    outline: {
      kind: 'outline',
      about: 'The outline as SVG path data in the unit of the job, or a list of corners',
      examples: ['M0 0 L6 0 L6 4 A3 3 0 0 1 0 4 Z', '0,0 6,0 3,5'],
    },
  },
  outline,
  parallel: parallelBy(outline),
  growsUnevenly: true,
  natural: (fields) => {
    const { width, height } = pathBox(pathOf(fields));
    return { width, height };
  },
  reveals: 'alike',
};
