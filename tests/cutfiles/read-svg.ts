import { readSvg } from '../readers/svg-elements.ts';
import type { P } from './points.ts';

export interface ReadWay {
  readonly id: string;
  readonly layer: string;
  readonly closed: boolean;
  readonly points: P[];
}

/** Every way of an SVG as points that lie within 0.0005 mm of it, no farther than 0.5 mm apart on curves. */
export function waysOf(svg: string): ReadWay[] {
  return readSvg(svg).paths.flatMap(({ groups, attributes, segments, closed }) => {
    if (attributes.stroke === undefined) return [];
    const points: P[] = [segments[0]!.from];
    for (const segment of segments) {
      if (segment.kind === 'line') points.push(segment.to);
      else if (segment.kind === 'cubic') {
        for (let i = 1; i <= 64; i++) {
          const [t, u] = [i / 64, 1 - i / 64];
          const mix = (k: 'x' | 'y'): number =>
            u ** 3 * segment.from[k] +
            3 * u * u * t * segment.c1[k] +
            3 * u * t * t * segment.c2[k] +
            t ** 3 * segment.to[k];
          points.push({ x: mix('x'), y: mix('y') });
        }
      } else {
        const { centre, radius, clockwise } = segment;
        const begin = Math.atan2(segment.from.y - centre.y, segment.from.x - centre.x);
        const end = Math.atan2(segment.to.y - centre.y, segment.to.x - centre.x);
        let sweep = clockwise ? end - begin : begin - end;
        while (sweep <= 1e-9) sweep += 2 * Math.PI;
        const count = Math.max(4, Math.ceil(sweep / (2 * Math.acos(1 - Math.min(0.5, 0.0004 / radius)))));
        for (let i = 1; i < count; i++) {
          const angle = begin + ((clockwise ? 1 : -1) * sweep * i) / count;
          points.push({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
        }
        points.push(segment.to);
      }
    }
    // The reader draws the side back to the start, which a closed way has anyway.
    const [start, end] = [points[0]!, points.at(-1)!];
    if (closed === 1 && Math.hypot(start.x - end.x, start.y - end.y) < 1e-9) points.pop();
    return [{ id: attributes.id ?? '', layer: groups.at(-1) ?? '', closed: closed === 1, points }];
  });
}
