import { nearest } from '../problems/nearest.ts';
import { error, fail, type Problem, type Result } from '../problems/problem.ts';
import { quoted, word } from '../problems/quoted.ts';
import type { OutputOptions } from './options.ts';

/**
 * What the library's functions are called with, looked at before it is believed: not every caller has types, and what is
 * wrong there is to be said as all else that is wrong, not thrown by whatever stumbles over it.
 */
type Kind = (value: unknown) => boolean;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isText: Kind = (value) => typeof value === 'string';
const isFunction: Kind = (value) => typeof value === 'function';
const isListOf =
  (kind: Kind): Kind =>
  (value) =>
    Array.isArray(value) && value.every(kind);
const isMade =
  (...keys: readonly string[]): Kind =>
  (value) =>
    isRecord(value) && keys.every((key) => key in value);
const isFile: Kind = (value) => isRecord(value) && isText(value.text) && isText(value.file);

/** What a value must be, by the words that say it. */
const KINDS = {
  text: isText,
  'a number': (value) => typeof value === 'number' && Number.isFinite(value),
  'true or false': (value) => typeof value === 'boolean',
  'a list of texts': isListOf(isText),
  'two lengths': (value) =>
    isListOf((each) => typeof each === 'number' && each >= 0)(value) && Array.isArray(value) && value.length === 2,
  'whole or corners': (value) => value === 'whole' || value === 'corners',
  'in, mm or cm': (value) => value === 'in' || value === 'mm' || value === 'cm',
  'a text and the name of its file: {text, file}': isFile,
  'a list of texts with the names of their files': isListOf(isFile),
  'a row that jobsFromTable has made': isMade('row', 'columns', 'file'),
  'a list of jobs with files and titles': isListOf(isMade('file', 'title')),
  'a list that readDayList has read': (value) => value instanceof Map,
  'a list of problems': isListOf(isMade('severity', 'path')),
  'a list of solved jobs, as solveJob makes them': isListOf(isMade('job', 'mat', 'strokes', 'locate', 'again')),
  'a solved job, as solveJob makes it': isMade('job', 'mat', 'strokes', 'locate', 'again'),
  'a job that was read': isMade('job', 'written'),
  'a job that was solved': isMade('job', 'mat'),
  'something that prepare has made': isMade('drawn', 'formats', 'ready'),
  'a function': isFunction,
  'a plan of cuts, a node of a stock plan': isMade('kind', 'x', 'y', 'width', 'height'),
  'a plan, as the record of stock has it': isMade('number', 'jobs', 'change'),
  'a list of strokes for each job': isListOf(isListOf(isMade('guide', 'setting'))),
  'a change, {path, value}': isMade('path', 'value'),
  'a list of papers: {id, name, width, height}': isListOf(isMade('id', 'name', 'width', 'height')),
  'keys and places in lists': isListOf((each) => isText(each) || typeof each === 'number'),
  'an object': isRecord,
} as const satisfies Readonly<Record<string, Kind>>;

export type KindWords = keyof typeof KINDS;

/** Problems of one argument; `undefined` stands for what is left out, where that may be. */
export function wrongArgument(name: string, value: unknown, kind: KindWords, optional = false): readonly Problem[] {
  if ((optional && value === undefined) || KINDS[kind](value)) return [];
  return [error('call-wrong', [name], `${name} is to be ${kind}, not ${said(value)}`, 'hand that over')];
}

const MAKING: { readonly [Name in keyof Required<OutputOptions>]: KindWords } = {
  paper: 'text',
  printer: 'text',
  units: 'in, mm or cm',
  date: 'text',
  number: 'text',
  format: 'a list of texts',
  dpi: 'a number',
  extent: 'whole or corners',
  show: 'a list of texts',
  dimensions: 'true or false',
  vary: 'text',
  machine: 'text',
  dialect: 'text',
  together: 'true or false',
  turn: 'true or false',
  coupon: 'true or false',
  rows: 'a number',
  columns: 'a number',
  gap: 'two lengths',
  margin: 'two lengths',
  skip: 'a number',
  run: 'true or false',
  fallouts: 'true or false',
  backing: 'text',
  cost: 'true or false',
  effort: 'a number',
  seed: 'a number',
  kind: 'text',
  head: 'text',
  thickness: 'text',
  cut: 'a list of texts',
};

const AROUND: Readonly<Record<string, KindWords>> = {
  pictures: 'a function',
  shopPictures: 'a function',
  renderer: 'a function',
  progress: 'a function',
  signal: 'an object',
};

const SOLVING: Readonly<Record<string, KindWords>> = {
  file: 'text',
  shop: 'a text and the name of its file: {text, file}',
  change: 'a change, {path, value}',
  fonts: 'an object',
};

const WORK: Readonly<Record<string, KindWords>> = {
  jobs: 'a list of solved jobs, as solveJob makes them',
  shop: 'a text and the name of its file: {text, file}',
};

const CALIBRATING: Readonly<Record<string, KindWords>> = {
  kind: 'text',
  text: 'text',
  file: 'text',
  shop: 'a text and the name of its file: {text, file}',
  date: 'text',
  confirmed: 'true or false',
};

const PAPER: Readonly<Record<string, KindWords>> = {
  custom: 'a list of papers: {id, name, width, height}',
  unit: 'in, mm or cm',
  path: 'keys and places in lists',
};

/** Options by the name of what they are for. */
export const KEYS = {
  solving: SOLVING,
  making: MAKING,
  around: AROUND,
  building: { ...SOLVING, ...MAKING, ...AROUND, documents: 'a list of texts' },
  work: WORK,
  calibrating: CALIBRATING,
  paper: PAPER,
  limits: { sheets: 'a number' },
} as const satisfies Readonly<Record<string, Readonly<Record<string, KindWords>>>>;

/** Problems of a word that is to be one of some. */
export function wrongWord(name: string, value: unknown, known: readonly string[]): readonly Problem[] {
  if (known.some((each) => each === value)) return [];
  const near = typeof value === 'string' ? nearest(value, known) : undefined;
  const there = `there are ${known.join(', ')}`;
  const hint = near === undefined ? there : `did you mean ${near}? ${there}`;
  return [error('call-wrong', [name], `${name} is to be one of some words, not ${said(value)}`, hint)];
}

/** Problems of a map of options: what it is, its keys and their values. */
export function wrongOptions(
  name: string,
  value: unknown,
  known: Readonly<Record<string, KindWords>>,
  needed: readonly string[] = [],
): readonly Problem[] {
  if (!isRecord(value)) return wrongArgument(name, value, 'an object');
  const missing = needed.filter((key) => value[key] === undefined);
  if (missing.length > 0) return missing.flatMap((key) => wrongArgument(`${name}.${key}`, undefined, known[key]!));
  return Object.entries(value).flatMap(([key, own]) => {
    const kind = known[key];
    if (kind === undefined) return [unknownKey(name, key, Object.keys(known))];
    return wrongArgument(`${name}.${key}`, own, kind, true);
  });
}

function unknownKey(name: string, key: string, known: readonly string[]): Problem {
  const near = nearest(key, known);
  const hint = near === undefined ? `there are ${known.join(', ')}` : `did you mean ${near}?`;
  return error('call-wrong', [name, key], `${name} has no key ${word(key)}`, hint);
}

/** Runs where nothing is wrong. */
export const called = <T>(wrong: readonly Problem[], run: () => Result<T>): Result<T> =>
  wrong.length > 0 ? fail(wrong) : run();

export const calledLater = async <T>(wrong: readonly Problem[], run: () => Promise<Result<T>>): Promise<Result<T>> =>
  wrong.length > 0 ? fail(wrong) : run();

function said(value: unknown): string {
  if (typeof value === 'string') return `the text ${quoted(value)}`;
  if (typeof value === 'number' || typeof value === 'boolean' || value === null || value === undefined)
    return `${value}`;
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'such a list';
  return typeof value === 'object' ? 'such an object' : `a ${typeof value}`;
}
