import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { type Point, plus, times } from '../../geometry/point.ts';
import { beside, labelBlock } from '../../text/block.ts';
import type { Places } from '../../text/places.ts';
import { GAP } from '../../text/room.ts';
import { type Style, stepsDown } from '../../text/styles.ts';
import { across } from '../full-scale/candidates.ts';
import { numeral, uprightFor } from './labels.ts';
import type { Tick } from './strokes.ts';

/** A tick's letter with its stroke's number; in the smallest sizes alone. */
export function* letterPlaces(
  end: Point,
  way: Point,
  { letter, stroke }: Tick,
  styles: readonly Style[],
  fonts: Fonts,
): Generator<Places> {
  const rotation = uprightFor(stroke.direction);
  const along = stroke.direction;
  for (const style of styles) {
    const sign = labelBlock([{ group: 'marks', text: letter, style }], fonts);
    const small = stepsDown(style)[2];
    const block =
      small === undefined
        ? sign
        : beside(
            sign,
            numeral(String(stroke.order), { ...small, weight: 'regular' }, 'marks', fonts),
            0.08 * style.size,
          );
    const [w, h] = rotation % 180 === 0 ? [block.width, block.height] : [block.height, block.width];
    const [over, aside] = [across(box(0, 0, w, h), way) / 2, across(box(0, 0, w, h), along) / 2];
    const outwards = letter === 'S' ? -1 : 1;
    const centres = [
      plus(end, times(way, over + GAP + 0.4)),
      ...[0, 4, 8, 12, 18, 24].flatMap((back) =>
        [outwards, -outwards].map((hand) =>
          plus(plus(end, times(way, -over - back)), times(along, hand * (aside + GAP + 0.4))),
        ),
      ),
    ];
    yield { block, rotation, spots: (isTaken) => centres.some((c) => isTaken(c.x - w / 2, c.y - h / 2)) };
  }
}
