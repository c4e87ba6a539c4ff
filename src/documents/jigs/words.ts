import type { TextItem } from '../../drawing/model.ts';
import type { Point } from '../../geometry/point.ts';
import type { Entry } from '../../text/entries.ts';
import { set } from '../../text/line.ts';
import type { Style } from '../../text/styles.ts';

export const steps = (texts: readonly string[]): readonly Entry[] =>
  texts.map((text, i) => ({ kind: 'step', number: i + 1, text }));

/** Words at a place of a figure. */
export const words = (
  text: string,
  { x, y }: Point,
  style: Style,
  anchor: TextItem['anchor'] = 'start',
  turn = 0,
): TextItem => set(text, x, y, style, anchor, turn);
