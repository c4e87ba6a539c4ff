import { parseLength } from '../units/parse.ts';
import { LENGTH_UNITS } from '../units/units.ts';
import type { OutputOptions } from './options.ts';

/** An option of an output as it is written on a command or in a form. */
export interface Option {
  /** What follows its name; nothing follows a switch. */
  readonly value?: string;
  readonly help: string;
  /** All that it takes, where that is a few words. */
  readonly words?: readonly string[];
  /** The options with what a text asks for, or what is wrong with the text. */
  readonly read: (text: string, options: OutputOptions) => OutputOptions | { readonly wrong: string };
}

type Read = Option['read'];

const text =
  (name: keyof OutputOptions): Read =>
  (given, options) => ({ ...options, [name]: given });

const flag =
  (name: keyof OutputOptions): Read =>
  (_, options) => ({ ...options, [name]: true });

const list = (given: string): readonly string[] => given.split(',').map((part) => part.trim());

const names =
  (name: keyof OutputOptions): Read =>
  (given, options) => ({ ...options, [name]: list(given) });

const oneOf =
  (name: keyof OutputOptions, known: readonly string[]): Read =>
  (given, options) =>
    known.includes(given)
      ? { ...options, [name]: given }
      : { wrong: `write ${known.slice(0, -1).join(', ')} or ${known.at(-1)}` };

/** Digits alone: `1e3` and `0x10` are slips. */
const number =
  (name: keyof OutputOptions, least: number, most: number, whole: boolean): Read =>
  (given, options) => {
    const value = /^\d{1,10}(?:\.\d{1,6})?$/.test(given) ? Number(given) : Number.NaN;
    return value >= least && value <= most && (!whole || Number.isInteger(value))
      ? { ...options, [name]: value }
      : { wrong: `give a ${whole ? 'whole ' : ''}number from ${least} to ${most}` };
  };

/** More labels than this lie on no sheet that can be bought. */
const MOST_LABELS = 60;

const lengths =
  (name: keyof OutputOptions): Read =>
  (given, options) => {
    const parts = given.split(',').map((part) => parseLength(part, 'mm'));
    for (const part of parts) if (!part.ok) return { wrong: `${part.message}; ${part.hint}` };
    const [first, second = first] = parts.flatMap((part) => (part.ok ? [part.value] : []));
    return parts.length > 2 || first === undefined || second === undefined || first < 0 || second < 0
      ? { wrong: 'give one length, or two with a comma between them' }
      : { ...options, [name]: [first, second] };
  };

/** One more format beside the PDF, or beside those that were asked for. */
const also =
  (format: string): Read =>
  (_, options) => ({ ...options, format: [...new Set([...(options.format ?? ['pdf']), format])] });

const EXTENTS = ['whole', 'corners'];

/** Every option of every output: one name for the same meaning everywhere. */
export const OPTIONS = {
  format: {
    value: '<formats>',
    help: 'in which formats, with commas',
    read: names('format'),
  },
  paper: {
    value: '<paper>',
    help: 'letter, a4, arch-c …, or a size such as "300 x 450 mm"; for what can be joined also roll:36in, or fit (default: the paper of the first job)',
    read: text('paper'),
  },
  printer: {
    value: '<name>',
    help: "a printer of the shop: its margins are kept, and full-scale sheets are corrected by its measured scale; none for no printer (default: the job's, else the shop's only one)",
    read: text('printer'),
  },
  extent: {
    value: '<extent>',
    help: 'whole: sheets taped into one; corners: sheets laid on by the corners of the board',
    words: EXTENTS,
    read: oneOf('extent', EXTENTS),
  },
  number: {
    value: '<number>',
    help: 'of the first job, as the shop counts: 41, A-07; the others count on (default: what each job says)',
    read: text('number'),
  },
  date: { value: '<text>', help: 'the date, as it is to be printed', read: text('date') },
  units: {
    value: '<unit>',
    help: "in, mm or cm, where no job says it (default: the shop's)",
    words: LENGTH_UNITS,
    read: oneOf('units', LENGTH_UNITS),
  },
  svg: { help: 'as SVG too', read: also('svg') },
  tiles: { help: 'each sheet as SVG too', read: also('tiles') },
  png: { help: 'each page as PNG too', read: also('png') },
  dpi: { value: '<dpi>', help: 'pixels to the inch of the PNG (default: 150)', read: number('dpi', 20, 600, false) },
  show: {
    value: '<groups>',
    help: 'only these parts, flattened, with commas: cut,marks,readings …',
    read: names('show'),
  },
  dimensions: { help: 'dimension lines beside the piece', read: flag('dimensions') },
  vary: {
    value: '<place=values>',
    help: 'one way beside the other, with commas: mat.layers[1].board=bone-4,slate-4',
    read: text('vary'),
  },
  machine: {
    value: '<name>',
    help: 'a machine of the shop, or laser, knife or bevel (default: the only machine of the shop)',
    read: text('machine'),
  },
  dialect: {
    value: '<dialect>',
    help: "of DXF: r12, which most programs take, or r2000 (default: the machine's own)",
    read: text('dialect'),
  },
  together: { help: 'all layers on one bed, instead of a file for each', read: flag('together') },
  turn: { help: 'lay the boards a quarter turn clockwise from how they hang', read: flag('turn') },
  coupon: { help: 'a small piece to measure the machine by, instead of the mat', read: flag('coupon') },
  rows: {
    value: '<count>',
    help: 'labels below each other (default: 8)',
    read: number('rows', 1, MOST_LABELS, true),
  },
  columns: {
    value: '<count>',
    help: 'labels side by side (default: 3)',
    read: number('columns', 1, MOST_LABELS, true),
  },
  gap: {
    value: '<lengths>',
    help: 'between columns, and between rows after a comma: "3 mm, 0 mm"; bare numbers are mm',
    read: lengths('gap'),
  },
  margin: {
    value: '<lengths>',
    help: 'at the sides, and above and below after a comma: "7 mm, 13 mm"',
    read: lengths('margin'),
  },
  skip: {
    value: '<count>',
    help: 'labels of the first sheet that are used already',
    read: number('skip', 0, MOST_LABELS, true),
  },
  run: {
    help: 'the list of the run alone: one order of work over all jobs',
    read: flag('run'),
  },
  fallouts: {
    help: 'what drops out of openings is stock too, once the last mat over it is cut',
    read: flag('fallouts'),
  },
  backing: {
    value: '<board>',
    help: 'another blank of this board for each piece, behind the artwork',
    read: text('backing'),
  },
  cost: { help: 'refuse boards without a price', read: flag('cost') },
  effort: {
    value: '<number>',
    help: 'how long to search for a better plan: 1 is about a second a board (default: 1)',
    read: number('effort', 0, 1000, false),
  },
  seed: { value: '<number>', help: 'another search (default: 1)', read: number('seed', 0, 2_147_483_647, true) },
  head: { value: '<name>', help: 'a head of the shop', read: text('head') },
  thickness: {
    value: '<list>',
    help: 'of the boards to test a head on: "1.4 mm, 3 mm"',
    read: text('thickness'),
  },
  cut: {
    value: '<formats>',
    help: 'also write what there is to cut, full scale: svg, dxf, hpgl, with commas',
    read: names('cut'),
  },
} as const satisfies Readonly<Record<string, Option>>;

export type OptionName = keyof typeof OPTIONS;
