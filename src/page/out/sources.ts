import { defined } from '../../problems/defined.ts';
import type { JobSource } from '../engine/answers.ts';
import { shopPictures } from '../files/shop-mark.ts';
import { open, text } from '../state/piece.ts';

/** The piece that is open, with all that its outputs need. */
export async function sources(): Promise<readonly JobSource[]> {
  const now = open.value;
  if (now === undefined) return [];
  const words = text.value;
  const pictures = await Promise.all(
    Object.entries(now.pictures).map(async ([name, blob]) => [name, new Uint8Array(await blob.arrayBuffer())] as const),
  );
  const { id, file, shop } = now;
  return [
    {
      piece: id,
      text: words,
      file,
      pictures: Object.fromEntries(pictures),
      ...defined({ shop, shopPictures: await shopPictures(shop) }),
    },
  ];
}
