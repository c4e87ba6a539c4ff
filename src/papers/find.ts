import { nearest } from '../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { parseLength, parseSize } from '../units/parse.ts';
import { showSize } from '../units/print.ts';
import { inchesFromMm, type LengthUnit, mmFromInches } from '../units/units.ts';
import { LARGEST_PAPER, type NamedPaper, type Paper, SMALLEST_PAPER } from './model.ts';
import { PAPERS } from './table.ts';

export interface PaperQuestion {
  /** Papers of the shop's own; they go before the table. */
  readonly custom?: readonly NamedPaper[];
  /** The unit of bare numbers; without one a size has to carry its own. */
  readonly unit?: LengthUnit;
  /** Where the text stands, for problems. */
  readonly path?: Problem['path'];
}

/** The longest text that can name a paper; bounds the work on hostile input. */
const LONGEST = 128;
const EXAMPLES = 'write a paper such as letter, a4 or arch-c, a size such as 300 x 450 mm, roll:36in, or fit';

/** Names that two tables give to different sizes, so that neither is offered. */
const AMBIGUOUS: ReadonlyMap<string, string> = new Map(
  ['f', 'arch-f', 'ansi-f'].map((id) => [id, '28 x 40 in and 44 x 68 in']),
);

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/gu, '-');

/**
 * The paper that `text` means: an id of the table or of `custom` (case does not matter), `W x H` with units,
 * `roll:W` with a unit, or `fit`. Errors: `paper-unknown`, `paper-ambiguous`, `paper-unit`, `paper-size`,
 * `paper-small`, `paper-large`.
 */
export function findPaper(text: string, question: PaperQuestion = {}): Result<Paper> {
  const path = question.path ?? [];
  const refuse = (code: string, message: string, hint: string) => fail([error(code, path, message, hint)]);
  const shown = JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
  if (text.trim() === '' || text.length > LONGEST) return refuse('paper-unknown', `${shown} names no paper`, EXAMPLES);
  const id = plain(text);
  if (id === 'fit') return succeed({ kind: 'fit', id: 'fit', name: 'one page' });

  const known = [...(question.custom ?? []), ...PAPERS];
  const named = known.find((p) => plain(p.id) === id || p.aliases?.some((alias) => plain(alias) === id));
  if (named !== undefined) {
    return bounded({ kind: 'sheet', id: named.id, name: named.name, width: named.width, height: named.height }, path);
  }
  const twice = AMBIGUOUS.get(id);
  if (twice !== undefined) {
    return refuse('paper-ambiguous', `${shown} is ${twice} in different tables`, 'write the size with its unit');
  }

  const roll = /^\s*roll\s*:?(.*)$/isu.exec(text);
  if (roll !== null) {
    const width = withUnit(
      (unit) => parseLength(roll[1]!, unit),
      question.unit,
      (length) => length,
    );
    if (width === 'unit')
      return refuse('paper-unit', `${shown} has no unit`, 'write for example roll:36in or roll:610mm');
    if (typeof width === 'string') return refuse('paper-size', width, 'write for example roll:36in or roll:610mm');
    return bounded(
      { kind: 'roll', id: text.trim(), name: `roll ${text.slice(text.indexOf(':') + 1).trim()}`, width: width.value },
      path,
    );
  }

  if (/\d/u.test(text) && /[x×*✕]|\bby\b/iu.test(text) && /^[\s\d.,½¼¾⅛⅜⅝⅞/]/u.test(text)) {
    const size = withUnit(
      (unit) => parseSize(text, unit),
      question.unit,
      (s) => s.width + s.height,
    );
    if (size === 'unit')
      return refuse('paper-unit', `${shown} has no unit`, 'write it behind the numbers: 300 x 450 mm');
    if (typeof size === 'string') return refuse('paper-size', size, 'write for example 300 x 450 mm or 13 x 19 in');
    return bounded({ kind: 'sheet', id: text.trim(), name: text.trim(), ...size.value }, path);
  }

  const near = nearest(id, [...known.flatMap((p) => [p.id, ...(p.aliases ?? [])]), 'fit', 'roll:36in']);
  return refuse(
    'paper-unknown',
    `${shown} is not a known paper`,
    near === undefined ? EXAMPLES : `did you mean ${near}?`,
  );
}

/** Reads with `unit`; without one reads in two units and says `unit` where the answers differ. Else the message. */
function withUnit<T>(
  read: (
    unit: LengthUnit,
  ) => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string },
  unit: LengthUnit | undefined,
  measure: (value: T) => number,
): { readonly value: T } | 'unit' | (string & {}) {
  const first = read(unit ?? 'mm');
  if (!first.ok) return first.message;
  if (unit !== undefined) return first;
  const second = read('in');
  return second.ok && Math.abs(measure(second.value) - measure(first.value)) > 1e-9 ? 'unit' : first;
}

function bounded(paper: Paper, path: Problem['path']): Result<Paper> {
  if (paper.kind === 'fit') return succeed(paper);
  const size = { width: paper.width, height: paper.kind === 'sheet' ? paper.height : paper.width };
  const said = paper.kind === 'sheet' ? `${showSize(size, 'mm')} of paper` : `a roll of ${size.width} mm`;
  const allowed = `${SMALLEST_PAPER} mm (${Math.round(inchesFromMm(SMALLEST_PAPER))} in) to ${LARGEST_PAPER} mm (200 in) are allowed each way`;
  const small = Math.min(size.width, size.height);
  if (!(small >= SMALLEST_PAPER))
    return fail([error('paper-small', path, `${said} is too small; ${allowed}`, 'choose a larger paper')]);
  if (!(Math.max(size.width, size.height) <= mmFromInches(200))) {
    return fail([
      error(
        'paper-large',
        path,
        `${said} is larger than a page can be; ${allowed}`,
        'choose a smaller paper, or several sheets',
      ),
    ]);
  }
  return succeed(paper);
}
