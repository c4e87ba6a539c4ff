import type { Drawing } from '../../drawing/model.ts';
import { ellipsized } from '../../fonts/measure.ts';
import type { Fonts } from '../../fonts/model.ts';
import { printerWords } from '../../settle/printer.ts';
import type { Printer } from '../../shop/printer.ts';
import { type Block, below, beside, linesBlock, type Words } from '../../text/block.ts';

export interface SheetLabel {
  readonly name: string;
  /** Among the sheets of the pattern, from 1. */
  readonly number: number;
  readonly of: number;
  readonly title: string;
  readonly view: Drawing['view'];
  /** Where on the board it lies, in words. */
  readonly place?: string;
  readonly printer?: Printer;
  readonly fonts: Fonts;
}

/** What a sheet says of itself, as shapes of falling size, made when they are tried: the first that finds a clear place is taken. */
export function labelBlocks({
  name,
  number,
  of,
  title,
  view,
  place,
  printer,
  fonts,
}: SheetLabel): readonly (() => Block)[] {
  const count = `sheet ${number} of ${of}`;
  const back = view === 'back' ? 'seen from the BACK' : view === 'face' ? 'seen from the FACE' : undefined;
  const stamp = printerWords(printer);
  const lines = (size: number, width: number): Words[] => [
    { text: ellipsized(title, 'bold', size, width, fonts), size, weight: 'bold' },
    { text: back === undefined ? count : `${count} · ${back}`, size },
    ...(place === undefined ? [] : [{ text: place, size }]),
    ...(stamp === undefined
      ? []
      : [{ text: ellipsized(stamp, 'regular', 0.8 * size, width + 30, fonts), size: 0.8 * size }]),
  ];
  const large = (size: number): Block => linesBlock([{ text: name, size, weight: 'bold' }], fonts);
  const narrow = (size: number, width: number): Block =>
    below(
      large(2.2 * size),
      linesBlock(
        [
          { text: ellipsized(title, 'bold', size, width, fonts), size, weight: 'bold' },
          { text: count, size },
          ...(place === undefined ? [] : [{ text: ellipsized(place, 'regular', size, width, fonts), size }]),
          ...(back === undefined ? [] : [{ text: back, size }]),
          ...(stamp === undefined
            ? []
            : [{ text: ellipsized(stamp, 'regular', 0.8 * size, width, fonts), size: 0.8 * size }]),
        ],
        fonts,
      ),
      1.5,
    );
  return [
    () => beside(large(14), linesBlock(lines(4.2, 80), fonts), 3, 'middle'),
    () => beside(large(11), linesBlock(lines(3.6, 56), fonts), 2.5, 'middle'),
    () => narrow(3.6, 40),
    () => narrow(3.2, 26),
    () => narrow(2.8, 18),
  ];
}
