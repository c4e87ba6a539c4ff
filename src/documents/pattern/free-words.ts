import type { Fonts } from '../../fonts/model.ts';
import { type Box, box, common, contains, grown } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { once } from '../../problems/once.ts';
import { labelBlock } from '../../text/block.ts';
import { CLEAR, type Style, stepsDown } from '../../text/styles.ts';
import { around, chained, closeTo, scan } from '../full-scale/candidates.ts';
import type { Label } from '../full-scale/label.ts';
import type { View } from '../full-scale/words-on-sheets.ts';
import type { Curved } from './curves.ts';

const lines = (group: string, texts: readonly string[], style: Style, fonts: Fonts) =>
  once(() =>
    labelBlock(
      texts.map((text) => ({ group, text, style })),
      fonts,
    ),
  );

const isIn = (area: Box, { x, y }: Point): boolean => contains(area, box(x, y, 0, 0));

/** What a hand needs to draw the curves of an opening: near its point, else anywhere in the opening, else led to it. */
export function handWorkLabels(
  { opening, box: extent, words }: Curved,
  { area, whole }: View,
  fonts: Fonts,
): readonly Label[] {
  const inside = whole ? grown(extent, -2) : common(grown(extent, -2), area);
  if (inside === undefined) return [];
  return words.map(({ lines: texts, at }): Label => {
    const sizes = stepsDown(CLEAR).map((style) => lines('curves', texts, style, fonts));
    const places = sizes.flatMap((block) => [() => closeTo(block(), at, inside), () => scan(block(), 0, inside)]);
    const far = sizes.slice(2).map((block) => () => around(block(), 0, at, 120));
    const seen = whole || isIn(area, at);
    return {
      what: `hand work of opening ${opening}`,
      why: 'text',
      ...defined({ target: seen ? at : undefined }),
      tries: [{ places: () => chained(places), ...defined({ farther: seen ? () => chained(far) : undefined }) }],
      optional: !whole,
    };
  });
}

/** Lines of words as near to a point as there is room, else led to it; nothing where the point is not seen. */
export function pointLabels(
  what: string,
  group: string,
  texts: readonly string[],
  at: Point,
  paper: Box,
  { area, whole }: View,
  fonts: Fonts,
): readonly Label[] {
  if (!whole && !isIn(area, at)) return [];
  const blocks = stepsDown(CLEAR).map((style) => lines(group, texts, style, fonts));
  const near = blocks.map((block) => () => closeTo(block(), at, paper, 60));
  const far = blocks.map((block) => () => around(block(), 0, at, 200));
  const tries = [{ places: () => chained(near), farther: () => chained(far) }];
  return [{ what, why: 'text', target: at, tries, optional: !whole }];
}
