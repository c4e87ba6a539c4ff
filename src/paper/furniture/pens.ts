import type { Pen } from '../../drawing/model.ts';
import { WORD_PENS } from '../../text/figures.ts';

/**
 * Pens of what the sheets themselves need. Only the line to cut is solid on a pattern, so nothing here that is long is
 * solid: join lines are dots, crosses and the backbones of rulers are fine dashes. Ticks of rulers are hairlines a few
 * millimetres long beside their numbers.
 */
export const SHEET_PENS: Readonly<Record<string, Pen>> = {
  join: { width: 0.55, colour: 0, dash: [0.01, 2.8], cap: 'round' },
  cross: { width: 0.18, colour: 0, dash: [0.8, 0.4], cap: 'butt' },
  ruler: { width: 0.15, colour: 0, dash: [0.6, 0.6], cap: 'butt' },
  tick: { width: 0.13, colour: 0, dash: [], cap: 'butt' },
};

/** Pens of the first sheet, which is never laid on a board, so that its lines may be solid. */
export const CHECK_PENS: Readonly<Record<string, Pen>> = {
  ...WORD_PENS,
  scale: { width: 0.2, colour: 0, dash: [], cap: 'butt' },
  thin: { width: 0.15, colour: 0, dash: [], cap: 'butt' },
  strong: { width: 0.35, colour: 0, dash: [], cap: 'butt' },
  faint: { width: 0.12, colour: 0.45, dash: [], cap: 'butt' },
  fact: { width: 0.2, colour: 0, dash: [0.5, 1], cap: 'butt' },
};
