import type { Fonts } from '../../fonts/model.ts';
import type { Letterhead } from '../../shop/letterhead.ts';
import { type Block, stacked } from '../../text/block.ts';
import { fittedLine } from '../../text/paragraph.ts';
import { BOLD, FINE } from '../../text/styles.ts';

/** The shop's name and the lines of its address, as wide as the widest of them and no wider than `width`. */
export function letterheadBlock({ name, address }: Letterhead, width: number, fonts: Fonts): Block {
  const lines = address.map((text) => fittedLine(text, width, FINE, fonts));
  return stacked([fittedLine(name, width, BOLD, fonts), ...lines], 0.7);
}
