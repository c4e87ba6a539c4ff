import { quarterArcs } from '../geometry/arc-cubics.ts';
import type { Path, Segment } from '../geometry/path.ts';
import { distance, type Point } from '../geometry/point.ts';

/** How numbers of a path are written. */
export interface PathWriting {
  readonly number: (mm: number) => string;
}

/** A path as SVG writes it, in absolute commands. */
export function pathData(path: Path, { number }: PathWriting): string {
  const at = ({ x, y }: Point): string => `${number(x)} ${number(y)}`;
  const step = (from: Point, segment: Segment, closing: boolean): string => {
    switch (segment.kind) {
      case 'line':
        // The side back to the start is what `Z` draws.
        return closing ? '' : `L${at(segment.to)}`;
      case 'arc': {
        const radius = number(distance(from, segment.centre));
        const sweep = segment.clockwise ? 1 : 0;
        return quarterArcs(from, segment)
          .map((part) => `A${radius} ${radius} 0 0 ${sweep} ${at(part.segment.to)}`)
          .join('');
      }
      case 'cubic':
        return `C${at(segment.c1)} ${at(segment.c2)} ${at(segment.to)}`;
      default: {
        const never: never = segment;
        throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
      }
    }
  };
  const { start, segments, closed } = path;
  const last = closed ? segments.length - 1 : segments.length;
  let data = `M${at(start)}`;
  let from = start;
  segments.forEach((segment, i) => {
    data += step(from, segment, i === last);
    from = segment.to;
  });
  return closed ? `${data}Z` : data;
}
