import type { SheetHead } from '../../documents/words/running-head.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { printerWords } from '../../settle/printer.ts';
import type { Printer } from '../../shop/printer.ts';
import { type Block, beside, type Line, labelBlock, stacked } from '../../text/block.ts';
import { ellipsized } from '../../text/line.ts';
import { CLEAR, FINE, inBold, LARGE, NAME, NUMBER, READING, SIGN, type Style, TEXT } from '../../text/styles.ts';

export interface SheetLabel {
  readonly name: string;
  /** Among the sheets of the pattern, from 1. */
  readonly number: number;
  readonly of: number;
  readonly title: string;
  /** What tells the sheet from those of other jobs. */
  readonly head?: SheetHead;
  readonly view: Drawing['view'];
  /** Where on the board it lies, in words. */
  readonly place?: string;
  readonly printer?: Printer;
  /** Which printer is corrected for, or that none is. */
  readonly stamp: string;
  readonly fonts: Fonts;
}

/** What a sheet says of itself, as shapes of falling size, made when they are tried: the first that finds a clear place is taken. */
export function labelBlocks({
  name,
  number,
  of,
  title,
  head,
  view,
  place,
  printer,
  fonts,
}: SheetLabel): readonly (() => Block)[] {
  const stamp = printerWords(printer);
  const named = titleOf(title, head);
  const due = head?.due;
  const count = `sheet ${number} of ${of}`;
  const back = view === 'back' ? 'seen from the BACK' : view === 'face' ? 'seen from the FACE' : undefined;
  const own =
    (style: Style, width: number) =>
    (text: string): Line => ({
      text: ellipsized(text, style, width, fonts),
      style,
    });
  const wide = (name: Style, style: Style, width: number): Block => {
    const said = [`${count}${back === undefined ? '' : ` · ${back}`}`, place, due].filter((text) => text !== undefined);
    const words = [
      own(inBold(style), width)(named),
      ...said.map(own(style, width + 30)),
      ...(stamp === undefined ? [] : [{ text: stamp, style: FINE, width: width + 30 }]),
    ];
    return beside(large(name), labelBlock(words, fonts), 3, 'middle');
  };
  const large = (style: Style): Block => labelBlock([{ text: name, style }], fonts);
  const narrow = (name: Style, style: Style, width: number): Block => {
    const said = [count, place, back, due].filter((text) => text !== undefined);
    const words = [
      own(inBold(style), width)(named),
      ...said.map(own(style, width)),
      ...(stamp === undefined ? [] : [{ text: stamp, style: FINE, width }]),
    ];
    return stacked([large(name), labelBlock(words, fonts)], 1.5);
  };
  return [
    () => wide(NUMBER, CLEAR, 80),
    () => wide(READING, LARGE, 56),
    () => narrow(NAME, LARGE, 40),
    () => narrow(SIGN, TEXT, 26),
    () => narrow(SIGN, FINE, 18),
  ];
}

/** What a sheet says by itself where no printer is corrected for; a corrected one says it below its name. */
export const uncorrectedBlock = ({ printer, stamp, fonts }: SheetLabel): Block | undefined =>
  printerWords(printer) === undefined ? labelBlock([{ text: stamp, style: FINE }], fonts) : undefined;

/** A drawing's title with the number of its job before it. */
export const titleOf = (title: string, head: SheetHead | undefined): string =>
  head?.number === undefined ? title : `${head.number}  ${title}`;
