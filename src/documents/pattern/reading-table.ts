import type { Stroke } from '../../bench/model.ts';
import type { Readings } from '../../drawing/full-scale.ts';
import { BACK_WORDS, backSide } from '../words/back-side.ts';
import { stateWords } from './labels.ts';
import { senseWords, settingWords } from './reading-words.ts';

/** As on the ticket. */
const NAMED = `Sides are named as they lie before you, ${BACK_WORDS}.`;

/** More settings than this are no help on sheet 1. */
const MOST_LISTED = 80;

/** What the guide is set to and for which strokes, in the order of work; strokes of one setting in one row. */
export function readingTable(strokes: readonly Stroke[]): Readings {
  if (strokes.length > MOST_LISTED) {
    const where = 'The setting stands beside every side, and the check command lists all in the order of work.';
    return { rows: [], caption: `${where} ${NAMED}` };
  }
  const rows = new Map<string, string[]>();
  for (const stroke of [...strokes].sort((a, b) => a.order - b.order)) {
    const said = [settingWords(stroke), senseWords(stroke), ...stateWords(stroke)];
    const reading = said.filter((text) => text !== '').join(', ');
    rows.set(reading, [...(rows.get(reading) ?? []), `${stroke.order} ${backSide(stroke)}`]);
  }
  return { rows: [...rows].map(([reading, of]) => [reading, of.join(', ')]), caption: NAMED };
}
