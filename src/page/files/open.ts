import { batch, signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { EMPTY, type History, history } from '../state/history.ts';
import { look, type Open, open, piece, text } from '../state/piece.ts';
import { place } from '../state/place.ts';
import { lit } from '../state/shown.ts';

/** The shop's file for pieces that are opened from now on. */
export const shop = signal<Source | undefined>(undefined);

const newId = (): string => crypto.randomUUID();

export interface Opening {
  readonly id?: string;
  readonly file: string;
  readonly text: string;
  readonly shop?: Source | undefined;
  readonly pictures?: Readonly<Record<string, Blob>>;
  readonly history?: History;
}

/** Puts a piece on the bench and gives its id; loading is no edit, so there is nothing to undo but what its own history holds. */
export function openPiece({ id, file, text: words, shop: own, pictures, history: past }: Opening): string {
  const used = own ?? shop.value;
  const next: Open = {
    id: id ?? newId(),
    file,
    pictures: pictures ?? {},
    ...defined({ shop: used }),
  };
  batch(() => {
    look.value = undefined;
    piece.value = undefined;
    lit.value = [];
    history.value = past ?? EMPTY;
    text.value = words;
    open.value = next;
    place.value = 'describe';
  });
  return next.id;
}
