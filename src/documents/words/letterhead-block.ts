import type { PathItem } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { placedPath } from '../../geometry/path.ts';
import { type Point, type Size, times } from '../../geometry/point.ts';
import type { Letterhead } from '../../shop/letterhead.ts';
import { type Block, beside, stacked } from '../../text/block.ts';
import { fittedLine } from '../../text/paragraph.ts';
import { BOLD, FINE } from '../../text/styles.ts';

/** What documents show of a shop. */
export interface ShownLetterhead extends Letterhead {
  readonly shown?: ShownMark;
}

/** Of its mark only the proportions count. */
export interface ShownMark extends Size {
  readonly items?: readonly PathItem[];
  /** As the document's pictures call it. */
  readonly picture?: string;
}

/** The largest that a mark is set anywhere, mm. */
export const LARGEST_MARK: Size = { width: 40, height: 16 };
const LEAST_HEIGHT = 9;
const BETWEEN = 3;

/** The shop's name and the lines of its address, its mark before them, as wide as they are and no wider than `width`. */
export function letterheadBlock({ name, address, shown }: ShownLetterhead, width: number, fonts: Fonts): Block {
  const lines = (room: number): Block =>
    stacked([fittedLine(name, room, BOLD, fonts), ...address.map((text) => fittedLine(text, room, FINE, fonts))], 0.7);
  if (shown === undefined) return lines(width);
  const height = Math.min(LARGEST_MARK.height, Math.max(LEAST_HEIGHT, lines(width).height));
  const mark = markBlock(shown, { width: Math.min(LARGEST_MARK.width, width / 3), height });
  return beside(mark, lines(width - mark.width - BETWEEN), BETWEEN, 'middle');
}

/** As large as fits. */
export function markBlock({ width, height, items = [], picture }: ShownMark, most: Size): Block {
  const scale = Math.min(most.width / width, most.height / height);
  const place = (p: Point): Point => times(p, scale);
  const size = { width: width * scale, height: height * scale };
  const painted = items.map((item) => ({ ...item, paths: item.paths.map((path) => placedPath(path, place)) }));
  const shown =
    picture === undefined ? [] : [{ kind: 'picture' as const, picture, box: box(0, 0, size.width, size.height) }];
  return { ...size, items: [...painted, ...shown] };
}
