import { quoted } from '../../problems/quoted.ts';
import { leaf, type Reading, refused, taken } from './fields.ts';

/** Years far off are slips of the pen; only the leap day is left to be looked at. */
const DAY =
  /^((?:19|20|21)\d\d)-(02-(?:0[1-9]|[12]\d)|(?:0[469]|11)-(?:(?:0[1-9]|[12]\d)|30)|(?:0[13578]|1[02])-(?:(?:0[1-9]|[12]\d)|3[01]))$/;

/** As ISO 8601 writes it: year, month, day. */
export type Day = string;

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

function partsOf(text: string): readonly [year: number, month: number, day: number] | undefined {
  if (!DAY.test(text)) return undefined;
  const [year, month, of] = text.split('-').map(Number) as [number, number, number];
  return month === 2 && of === 29 && !isLeap(year) ? undefined : [year, month, of];
}

export const isDay = (text: string): boolean => partsOf(text) !== undefined;

function readDay(input: unknown): Reading<Day> {
  if (typeof input !== 'string') return undefined;
  const text = input.trim();
  if (partsOf(text) !== undefined) return taken(text);
  return refused('day-unreadable', `${quoted(input)} is no day`, 'write year-month-day, for example 2031-03-12');
}

/** A day of the calendar. */
export const day = (about: string, examples: readonly string[]) =>
  leaf('a day such as 2031-03-12', readDay, about, examples, { type: 'string', pattern: DAY.source });

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** `Wed 12 March 2031`: the month as a word, since figures are read both ways round. */
export function showDay(text: Day): string {
  const [year, month, of] = partsOf(text)!;
  return `${WEEKDAYS[weekday(year, month, of)]} ${of} ${MONTHS[month - 1]} ${year}`;
}

/** 0 is Sunday: days since 1 March of year 0, which was a Wednesday of the Gregorian calendar carried back. */
function weekday(year: number, month: number, of: number): number {
  // Years that begin in March have their odd day at the end.
  const y = month < 3 ? year - 1 : year;
  const since = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + of - 1;
  return (3 + since + 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400)) % 7;
}
