import {
  BOLD,
  CLEAR,
  FINE,
  FINE_BOLD,
  HEAD,
  LARGE,
  LARGE_BOLD,
  NAME,
  READING,
  SIGN,
  type Style,
  TEXT,
} from '../../text/styles.ts';

/** How words that belong together on a full-scale sheet are set: what comes first, what is said aloud, the rest. */
export interface WordStyles {
  readonly title: Style;
  readonly strong: Style;
  readonly words: Style;
}

/** From full size down. */
export const WORD_STEPS: readonly WordStyles[] = [
  { title: SIGN, strong: HEAD, words: CLEAR },
  { title: HEAD, strong: LARGE_BOLD, words: LARGE },
  { title: LARGE_BOLD, strong: BOLD, words: TEXT },
  { title: BOLD, strong: FINE_BOLD, words: FINE },
];

/** Of TOP, which never goes: 10 mm where there is room, 8.6 pt at least. */
export const TOP_STEPS: readonly Style[] = [READING, NAME, SIGN, HEAD, LARGE_BOLD, BOLD];
