import type { Rotation } from '../../drawing/document.ts';
import type { Fonts } from '../../fonts/model.ts';
import { clipLine } from '../../geometry/clip.ts';
import { distance, minus, type Point, unit } from '../../geometry/point.ts';
import { once } from '../../problems/once.ts';
import { labelBlock } from '../../text/block.ts';
import { CLEAR, stepsDown } from '../../text/styles.ts';
import { besideSide, chained, nearestTo } from '../full-scale/candidates.ts';
import type { Label } from '../full-scale/label.ts';
import type { View } from '../full-scale/words-on-sheets.ts';
import type { DrawnRest } from './strokes.ts';

/** Off the line, at least and at most, mm. */
const [NEAR, FAR] = [1.4, 12];

/** Whose line it is, along it and nearer to it than to any other of them: lines of neighbours run through each other. */
export function restLabels(rests: readonly DrawnRest[], { area, whole }: View, fonts: Fonts): readonly Label[] {
  return rests.flatMap(({ stroke, item }): readonly Label[] => {
    const seen = whole ? item : clipLine(item, area);
    if (seen === undefined || distance(seen.from, seen.to) < 10) return [];
    const others = rests.flatMap((rest) => (rest.item === item ? [] : [rest.item]));
    const text = `${item.pen} for ${stroke.order}`;
    const way = unit(minus(seen.to, seen.from));
    const rotation: Rotation = Math.abs(way.y) > Math.abs(way.x) ? 270 : 0;
    const asides: readonly Point[] = [
      { x: way.y, y: -way.x },
      { x: -way.y, y: way.x },
    ];
    const places = stepsDown(CLEAR).flatMap((style) => {
      const block = once(() => labelBlock([{ group: 'straightedge', text, style }], fonts));
      return asides.map(
        (aside) => () => nearestTo(item, others, besideSide(block(), seen, aside, rotation, NEAR, FAR)),
      );
    });
    return [
      {
        what: `the name of the ${item.pen}'s line of stroke ${stroke.order}`,
        why: 'text',
        tries: [{ places: () => chained(places) }],
      },
    ];
  });
}
