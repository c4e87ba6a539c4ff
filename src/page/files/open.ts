import { batch, signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import { defined } from '../../problems/defined.ts';
import { calibration } from '../state/calibration.ts';
import { EMPTY, ended, type History, history } from '../state/history.ts';
import { look, type Open, open, piece, text } from '../state/piece.ts';
import { type Place, place } from '../state/place.ts';
import { lit } from '../state/shown.ts';
import { newId } from './store.ts';

/** The shop's file for pieces that are opened from now on. */
export const shop = signal<Source | undefined>(undefined);

let openings = 0;
/** To be called when something is to be opened that must be read first: says later whether nothing else was opened, or asked for, since. */
export function beginOpening(): () => boolean {
  const own = ++openings;
  return () => own === openings;
}

export interface Opening {
  readonly id?: string;
  readonly file: string;
  readonly text: string;
  readonly shop?: Source | undefined;
  readonly pictures?: Readonly<Record<string, Blob>>;
  readonly history?: History;
  readonly of?: Open['of'];
  readonly calibrating?: Open['calibrating'];
}

/** Puts a piece on the bench, or what else was kept where it is worked on, and gives its id; loading is no edit, so there is nothing to undo but what its own history holds. */
export const openPiece = (opening: Opening): string => put(opening, opening.of === undefined ? 'describe' : 'shop');

/** Puts a piece, the shop or readings where they are worked on. */
export function put(opening: Opening, where: Place): string {
  const { id, file, text: words, shop: own, pictures, history: past, of, calibrating } = opening;
  const used = own ?? shop.value;
  const next: Open = {
    id: id ?? newId(),
    file,
    pictures: pictures ?? {},
    ...defined({ of, calibrating }),
    ...(of === 'shop' ? {} : defined({ shop: used })),
  };
  openings += 1;
  batch(() => {
    look.value = undefined;
    piece.value = undefined;
    calibration.value = undefined;
    lit.value = [];
    history.value = ended(past ?? EMPTY);
    text.value = words;
    open.value = next;
    place.value = where;
  });
  return next.id;
}
