import { signal } from '@preact/signals';

/** Where on the page one is: choosing a piece, describing it, making what comes out of it, cutting it. */
export type Place = 'pieces' | 'describe' | 'out' | 'cutter' | 'shop' | 'day';
export const place = signal<Place>('pieces');

/** A sentence that is said to everybody, and to those who listen to the page; it stays until the next. */
export const saying = signal('');
/** What went wrong with files or storage, until it is put right: its words, and a way out. */
export interface Trouble {
  /** The piece that it speaks of: while another one is open it is not to be seen, since its ways out are for that one. */
  readonly of?: string;
  readonly words: string;
  readonly ways: readonly { readonly words: string; readonly go: () => void }[];
}
export const trouble = signal<Trouble | undefined>(undefined);

/** The text beside the form. */
export const textShown = signal(false);
