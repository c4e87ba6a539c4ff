import { quarterArcs } from '../../geometry/arc-cubics.ts';
import { piecesOf } from '../../geometry/curves.ts';
import type { Path } from '../../geometry/path.ts';
import { distance, type Point } from '../../geometry/point.ts';

/** Fine enough for any screen, and short. */
const round = (value: number): number => Math.round(value * 1000) / 1000;
const at = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;

/** A path as SVG writes it, for the screen. */
export function pathData(path: Path): string {
  const steps = piecesOf(path).map(({ from, segment }) => {
    switch (segment.kind) {
      case 'line':
        return `L${at(segment.to)}`;
      case 'arc': {
        const radius = round(distance(from, segment.centre));
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
  });
  return `M${at(path.start)}${steps.join('')}${path.closed ? 'Z' : ''}`;
}
