import { LARGEST_MARK, type ShownLetterhead } from '../documents/words/letterhead-block.ts';
import type { Pictures } from '../pictures/model.ts';
import { error, fail, type Result, succeed, warning } from '../problems/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { dotsFromMm } from '../units/units.ts';
import type { PictureReader } from './options.ts';
import type { Ready } from './output.ts';
import { inShop } from './ready.ts';

/** Fine enough for small letters in a mark. */
const DPI = 400;
const PICTURE = 'mark';
const PATH = ['shop', 'mark'];

interface Shown {
  readonly letterhead?: ShownLetterhead;
  readonly pictures: Pictures;
}

/**
 * What documents show of the shop, its mark read. Where nobody hands files of the shop over, the mark is left out, with a warning.
 * Errors: `picture-unreadable`, those of `readMark`, all in the shop's file.
 */
export async function shownLetterhead(
  { shop, work }: Pick<Ready, 'shop' | 'work'>,
  source: PictureReader | undefined,
): Promise<Result<Shown>> {
  const shown = await markRead(shop, source);
  return shown.ok ? succeed(shown.value, inShop(work, shown.warnings)) : fail(inShop(work, shown.problems));
}

async function markRead(
  { letterhead }: Pick<Shop, 'letterhead'>,
  source: PictureReader | undefined,
): Promise<Result<Shown>> {
  if (letterhead?.mark === undefined)
    return succeed({ pictures: {}, ...(letterhead === undefined ? {} : { letterhead }) });
  if (source === undefined) {
    const message = 'the shop’s mark was not handed over, so it is left out';
    return succeed({ letterhead, pictures: {} }, [
      warning('picture-missing', PATH, message, 'hand its bytes over with the shop'),
    ]);
  }
  const found = await source(letterhead.mark);
  if ('why' in found) return fail([error('picture-unreadable', PATH, found.why, found.hint)]);
  const { readMark } = await import('../pictures/mark.ts');
  const most = { width: dotsFromMm(LARGEST_MARK.width, DPI), height: dotsFromMm(LARGEST_MARK.height, DPI) };
  const mark = await readMark(found.bytes, letterhead.mark, most, PATH);
  if (!mark.ok) return mark;
  const { width, height, items, picture } = mark.value;
  const shown = {
    width,
    height,
    ...(items === undefined ? {} : { items }),
    ...(picture === undefined ? {} : { picture: PICTURE }),
  };
  const pictures = picture === undefined ? {} : { [PICTURE]: picture };
  return succeed({ letterhead: { ...letterhead, shown }, pictures }, mark.warnings);
}
