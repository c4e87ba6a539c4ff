import { signal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { defined } from '../../problems/defined.ts';
import { look as ask } from '../engine/engines.ts';
import type { Seen } from '../engine/seen.ts';
import { shop } from '../files/open.ts';
import { Shade } from './face.ts';
import { seenElements } from './items.ts';
import { pieceUrls } from './urls.ts';

/** A piece to be drawn small. */
export interface ToDraw {
  /** Another one where the piece, or its text, is another. */
  readonly key: string;
  readonly file: string;
  readonly text: string;
  readonly pictures?: Readonly<Record<string, Blob>>;
}

/** What pieces look like, as they are drawn one after the other. */
const faces = signal<ReadonlyMap<string, Seen>>(new Map());

/** Draws what is not drawn yet; a piece that does not go together stays an empty place. */
export async function drawSmall(all: readonly ToDraw[]): Promise<void> {
  for (const { key, file, text, pictures = {} } of all) {
    if (faces.peek().has(key)) continue;
    const found = await ask({
      text,
      file,
      view: 'small',
      pictures: Object.keys(pictures),
      ...defined({ shop: shop.value }),
    });
    const face = found.piece?.face;
    if (face !== undefined) faces.value = new Map(faces.value).set(key, face);
  }
}

export interface SmallOf {
  readonly of: string;
  readonly pictures?: Readonly<Record<string, Blob>>;
}

export function Small({ of, pictures = {} }: SmallOf): ComponentChild {
  const face = faces.value.get(of);
  if (face === undefined) return h('span', { class: 'small' });
  const { width, height } = face;
  return h('svg', { class: 'small', viewBox: `-4 -4 ${width + 8} ${height + 12}`, 'aria-hidden': 'true' }, [
    h(Shade, { key: 'shade', width, height }),
    ...seenElements(face, pieceUrls(pictures)),
  ]);
}
