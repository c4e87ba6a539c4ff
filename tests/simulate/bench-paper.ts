import { inMm } from '../documents/tickets.ts';
import type { ReadPage, ReadText } from '../readers/pdf-lines.ts';

/**
 * What a hand reads off a ticket or a run list, in the order in which it stands there: headings, words of steps, tables of
 * marks, readings with the strokes below them. Nothing of the engine is used.
 */
export type Thing =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'marks'; readonly rows: readonly MarkRow[] }
  | { readonly kind: 'reading'; readonly reading?: Reading; readonly strokes: readonly ReadStroke[] };

export interface Reading {
  /** mm, as the exact number beside the large one says. */
  readonly mm: number;
  /** As it is set: what is read alike is one setting. */
  readonly said: string;
}

export interface ReadStroke {
  /** On a run list: of which ticket and layer. */
  readonly lot?: string;
  readonly number: number;
  /** The words beside it. */
  readonly words: string;
  /** What stands under its reading, where no guide is set. */
  readonly laid: string;
}

export interface Mark {
  readonly edge: string;
  readonly mm: number;
}

export interface MarkRow {
  readonly number: number;
  readonly line: Mark;
  readonly start: Mark;
  readonly stop: Mark;
}

const LARGE = 9.5;
const HEADING = 4.4;
const isHeading = ({ size, at }: ReadText, { text }: ReadText): boolean =>
  size > HEADING && size < 5 && /^\d+$/.test(text) && at.x > 0;

/** Every sheet in the order of reading. */
export const thingsOn = (pages: readonly ReadPage[]): readonly Thing[] => pages.flatMap((page) => onPage(page));

function onPage(page: ReadPage): readonly Thing[] {
  const things: Thing[] = [];
  const texts = page.texts.filter(({ text }) => text.trim() !== '');
  let words: string[] = [];
  const flush = (): void => {
    if (words.length > 0) things.push({ kind: 'words', text: words.join(' ') });
    words = [];
  };
  let i = 0;
  while (i < texts.length) {
    const token = texts[i]!;
    const before = texts[i - 1];
    if (before !== undefined && isHeading(token, before) && Math.abs(before.at.y - token.at.y) < 0.1) {
      words.pop();
      flush();
      things.push({ kind: 'heading', text: token.text });
      i++;
    } else if (token.text === 'no.') {
      flush();
      const [rows, next] = tableFrom(texts, i);
      things.push({ kind: 'marks', rows });
      i = next;
    } else if (token.size > LARGE || /^(?:guide off|by straightedge)$/.test(token.text)) {
      flush();
      const [thing, next] = readingFrom(texts, i);
      things.push(thing);
      i = next;
    } else {
      words.push(token.text);
      i++;
    }
  }
  flush();
  return things;
}

/** Rows under a head, cells by where their columns begin. */
function tableFrom(texts: readonly ReadText[], from: number): readonly [readonly MarkRow[], number] {
  const head = texts.slice(from).filter(({ at }, i, all) => Math.abs(at.y - all[0]!.at.y) < 0.1 && i < 8);
  const columns = head.map(({ text, at }) => ({ name: text.split(',')[0]!, x: at.x, unit: text.split(', ')[1] }));
  const rows: Map<string, string>[] = [];
  let i = from + head.length;
  for (; i < texts.length; i++) {
    const { text, at } = texts[i]!;
    const column = columns.find(({ x }) => Math.abs(x - at.x) < 0.05);
    if (column === undefined) break;
    if (column.name === 'no.') rows.push(new Map());
    const cells = rows.at(-1)!;
    cells.set(column.name, `${cells.get(column.name) ?? ''} ${text}`.trim());
  }
  const unit = columns.find(({ name }) => name === 'S')!.unit!;
  return [
    rows.map((cells) => ({
      number: Number(cells.get('no.')),
      line: mark(cells.get('line')!, unit),
      start: mark(cells.get('S')!, unit),
      stop: mark(cells.get('E')!, unit),
    })),
    i,
  ];
}

/** A quarter of a part less or more: what a hand makes of scant and full. */
const PART: Readonly<Record<string, number>> = { in: 25.4 / 32, mm: 0.5, cm: 0.5 };

function mark(text: string, unit: string): Mark {
  const [edge, ...rest] = text.split(' ');
  const sense = /scant|full/.exec(text)?.[0];
  const amount = rest.filter((word) => word !== sense).join(' ');
  const aside = sense === undefined ? 0 : (sense === 'scant' ? -1 : 1) * (PART[unit]! / 4);
  return { edge: edge!, mm: inMm(amount, unit) + aside };
}

/** How a step begins that follows the strokes of a reading. */
const STEP = /^(?:Lift|Push|Reverse bevel|Mark out|The mat above|Fix|Put|Cut|Lay|Rule|Blade|Sharp|At each|Along)\b/;

function readingFrom(texts: readonly ReadText[], from: number): readonly [Thing, number] {
  const large = texts[from]!;
  let i = from + 1;
  let reading: Reading | undefined;
  if (large.size > LARGE && large.text !== 'off') {
    const [unit, exact] = [texts[i]!.text, texts[i + 1]!.text];
    i += 2;
    const sense = /^(?:scant|full)/.exec(texts[i]?.text ?? '')?.[0];
    if (sense !== undefined) i++;
    reading = { mm: inMm(exact, unit), said: `${large.text} ${unit} ${sense ?? ''}` };
  }
  const strokes: { lot?: string; number: number; words: string; laid: string }[] = [];
  let [lot, laid]: [string | undefined, string] = [undefined, ''];
  for (; i < texts.length; i++) {
    const { text, fill, size, at } = texts[i]!;
    const next = texts[i + 1];
    if (size > LARGE || (next !== undefined && isHeading(next, texts[i]!) && Math.abs(next.at.y - at.y) < 0.1)) break;
    if (fill === '#ffffff' && /^\d+$/.test(text)) {
      // Below its reading, and not past the column that the reading stands in.
      if (at.y < large.at.y || at.x < large.at.x - 0.1) throw new Error(`stroke ${text} is not under its reading`);
      strokes.push({ ...(lot === undefined ? {} : { lot }), number: Number(text), words: '', laid });
    } else if (/: ?$/.test(text) && !text.includes(',')) lot = text.replace(/: ?$/, '');
    else if (/^(?:guide OFF|straightedge)/.test(text)) laid = text;
    else if (STEP.test(text)) break;
    else if (strokes.length > 0 && !/turn$|°$|^all \d|seen from/.test(text)) strokes.at(-1)!.words += ` ${text}`;
  }
  return [{ kind: 'reading', ...(reading === undefined ? {} : { reading }), strokes }, i];
}

/** The side that a stroke's words name. */
export function sideOf({ words }: Pick<ReadStroke, 'words'>): string {
  const found = /\b(left|right|top|bottom)\b,?(?: \d+,?)?/.exec(words.trim());
  if (found === null) throw new Error(`${JSON.stringify(words)} names no side`);
  return found[1]!;
}
