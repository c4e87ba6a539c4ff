import { build } from '../../src/index.ts';
import type { P } from '../cutfiles/points.ts';
import { type ReadCurve, type ReadLine, type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { dot, leftOf, length, minus, plus, unit } from './figure.ts';
import { cot, type Hand, type Head, type Wanted } from './jobs.ts';

/** A cut through a board: where it lies in the face and in the back, seen from the back, in the order of the travel. */
export interface Cut {
  readonly face: { readonly from: P; readonly to: P };
  readonly back: { readonly from: P; readonly to: P };
}

/** A letter at a tick, and where the number of its stroke stands beside it. */
interface Letter {
  readonly text: string;
  readonly at: P;
  readonly number: P;
}

/** What stands on the pattern of one layer, in mm from the upper left corner of the board, as it is drawn. */
export interface Sheet {
  readonly lines: readonly ReadLine[];
  readonly curves: readonly ReadCurve[];
  readonly letters: readonly Letter[];
}

export interface Straightedge {
  readonly offset: number;
  readonly on: 'border' | 'opening';
}

export const shopOf = ({ opening, start, stop, overrun }: Head, edge?: Straightedge): string =>
  `units: mm\nheads: {h: {bevel: 45, opening: ${opening}, start: ${start}, stop: ${stop}, overrun: ${overrun}${edge === undefined ? '' : `, straightedge: ${edge.offset}, straightedgeOn: ${edge.on}`}}}\n`;

const LETTER_HEIGHT = 0.35;

/** The patterns of a job on pages of their own size, a sheet a layer; undefined where the job is refused. */
export async function patterns({ text }: Pick<Wanted, 'text'>, shop: string): Promise<readonly Sheet[] | undefined> {
  const built = await build(text, { shop: { text: shop, file: 'shop.yaml' }, file: 'job.yaml', paper: 'fit' });
  if (!built.ok) return undefined;
  const { report, files } = built.value;
  return Promise.all(
    report.patterns.map(async ({ file, pages, board }): Promise<Sheet> => {
      const [part] = pages.filter(({ width }) => width !== undefined);
      const read = await readPdf(files.find(({ name }) => name === file)!.bytes);
      const page = read.pages[part!.number - 1]!;
      if (part!.rotation !== 0) throw new Error('a page of its own size is never turned');
      const origin = { x: part!.pageX! - part!.x! + board!.x, y: part!.pageY! - part!.y! + board!.y };
      return sheetOf(page, origin);
    }),
  );
}

function sheetOf({ lines, curves, texts }: ReadPage, origin: P): Sheet {
  const own = <T extends ReadLine>(line: T): T => ({
    ...line,
    from: minus(line.from, origin),
    to: minus(line.to, origin),
  });
  return {
    lines: lines.filter(({ form, stroke }) => form && stroke !== undefined).map(own),
    curves: curves
      .filter(({ form, stroke }) => form && stroke !== undefined)
      .map((curve) => ({ ...own(curve), c1: minus(curve.c1, origin), c2: minus(curve.c2, origin) })),
    letters: texts
      .filter(({ text }) => text === 'S' || text === 'E')
      .map((letter) => {
        const numbers = texts.filter(({ text, turn }) => /^\d+$/.test(text) && Math.abs(turn - letter.turn) < 0.1);
        const at = middleOf(letter);
        const [number] = numbers.map(middleOf).sort((p, q) => length(minus(p, at)) - length(minus(q, at)));
        return { text: letter.text, at: minus(at, origin), number: minus(number ?? at, origin) };
      }),
  };
}

function middleOf({ at, size, width, turn }: ReadPage['texts'][number]): P {
  const way = { x: Math.cos((turn * Math.PI) / 180), y: Math.sin((turn * Math.PI) / 180) };
  return plus(plus(at, way, width / 2), leftOf(way), LETTER_HEIGHT * size);
}

const dashed = (dash: readonly number[], ...wanted: readonly number[]): boolean =>
  dash.length === wanted.length && dash.every((part, i) => Math.abs(part - wanted[i]!) < 0.01);

const MARK = [2.5, 0.8] as const;
/** The end's own dashes, on a crowded sheet. */
const END = [0.8, 0.8] as const;
const STRAIGHTEDGE = [12, 2.5] as const;

const isTick = ({ dash }: ReadLine): boolean => dashed(dash, ...MARK) || dashed(dash, ...END);

export interface Worked {
  readonly cuts: readonly Cut[];
  /** Ends whose letter was read, and those that had none. */
  readonly read: number;
  readonly unread: number;
  readonly faults: readonly string[];
}

/**
 * Works one layer as a person at the bench does who has nothing but the sheet, the head and the board: sets the scribe on
 * S, pushes the blade in, pulls to E. The blade leans away from the hand on which the head has its openings; the cut in the
 * face begins where the blade is when it is pushed in, `start` ahead of the scribe, and ends `stop` ahead of it.
 */
export function worked(
  sheet: Sheet,
  { thickness, angle, reverse }: { readonly thickness: number; readonly angle: number; readonly reverse: boolean },
  paper: number,
  head: Head,
  edge?: Straightedge,
): Worked {
  const hand: Hand = reverse ? (head.opening === 'left' ? 'right' : 'left') : head.opening;
  let [read, unread] = [0, 0];
  const faults: string[] = [];
  const curved = new Set(sheet.curves.map(({ path }) => path));
  const cuts = sheet.lines
    .filter(({ dash, path }) => dash.length === 0 && !curved.has(path))
    .map((line, index): Cut => {
      const ticks = ticksOf(line, index, sheet);
      const [start, stop] = inOrder(ticks, hand, line, sheet);
      const way = unit(minus(stop.at, start.at));
      for (const [tick, letter] of [
        [start, 'S'],
        [stop, 'E'],
      ] as const) {
        const told = lettersAt(tick.line, sheet);
        if (told.includes(letter)) read++;
        else if (told.length === 0) unread++;
        else faults.push(`a tick that is ${letter} by the travel says ${told.join(' and ')}`);
      }
      const entry = edge === undefined ? line.from : alongStraightedge(line, way, head, edge, sheet);
      const right = plus({ x: 0, y: 0 }, leftOf(way), -1);
      const lean = head.opening === 'left' ? right : plus({ x: 0, y: 0 }, right, -1);
      const at = (u: number, aside: number): P => plus(plus(entry, way, u), lean, aside);
      const u = (p: P): number => dot(minus(p, entry), way);
      const [begin, end] = [u(start.at) + head.start, u(stop.at) + head.stop];
      const [deep, through] = [paper * cot(angle), (thickness + paper) * cot(angle)];
      return {
        back: { from: at(begin, deep), to: at(end, deep) },
        face: { from: at(begin, through), to: at(end, through) },
      };
    });
  return { cuts, read, unread, faults };
}

interface Tick {
  readonly line: ReadLine;
  /** Where it crosses the line to follow, drawn on past its ends. */
  readonly at: P;
}

/**
 * The two ticks of a line: square to it, and across it or up to it. Where several sides end near each other, the numbers
 * beside the letters tell a person which tick is whose; here the order does in which they are drawn, two for each line.
 */
function ticksOf(line: ReadLine, index: number, { lines }: Sheet): readonly [Tick, Tick] {
  const way = unit(minus(line.to, line.from));
  const [a, b] = lines
    .filter(isTick)
    .slice(2 * index, 2 * index + 2)
    .map((tick): Tick => {
      if (Math.abs(dot(unit(minus(tick.to, tick.from)), way)) > 1e-3) throw new Error('a tick slants to its line');
      const ends = [tick.from, tick.to].map((end) => dot(minus(end, line.from), leftOf(way)));
      if (Math.min(...ends) > 0.02 || Math.max(...ends) < -0.02) throw new Error('a tick does not reach its line');
      return { line: tick, at: plus(line.from, way, dot(minus(tick.from, line.from), way)) };
    });
  if (a === undefined || b === undefined) throw new Error('a line to cut has no two ticks');
  return [a, b];
}

/** Which of the two is the start: a head has its openings on one hand of the travel, and the tick's longer part lies on the border. */
function inOrder([a, b]: readonly [Tick, Tick], hand: Hand, line: ReadLine, sheet: Sheet): readonly [Tick, Tick] {
  const way = unit(minus(b.at, a.at));
  const inner = openingSide(line, sheet);
  const onLeft = dot(inner, leftOf(way)) > 0;
  return onLeft === (hand === 'left') ? [a, b] : [b, a];
}

/** The way from a line into its opening: the side on which the outline goes on that it belongs to. */
function openingSide(line: ReadLine, { lines, curves }: Sheet): P {
  // Even-odd over all that is drawn solid, a hair beside the middle of the line.
  const middle = plus(line.from, minus(line.to, line.from), 0.5);
  const left = leftOf(unit(minus(line.to, line.from)));
  const solid = [
    ...lines.filter(({ dash }) => dash.length === 0).map(({ from, to }) => [from, to] as const),
    ...curves.filter(({ dash }) => dash.length === 0).flatMap((curve) => chords(curve)),
  ];
  const p = plus(middle, left, 0.2);
  // A ray in no special direction.
  const ray = { x: 0.7913, y: 0.6114 };
  const crossings = solid.filter(([a, b]) => {
    const [s, t] = [minus(a, p), minus(b, p)];
    const [u, v] = [ray.x * s.y - ray.y * s.x, ray.x * t.y - ray.y * t.x];
    if (u > 0 === v > 0) return false;
    const k = u / (u - v);
    return dot(plus(s, minus(t, s), k), ray) > 0;
  }).length;
  return crossings % 2 === 1 ? left : plus({ x: 0, y: 0 }, left, -1);
}

export function chords(curve: ReadCurve, count = 24): readonly (readonly [P, P])[] {
  const at = (t: number): P => {
    const s = 1 - t;
    const mix = (k: 'x' | 'y'): number =>
      s ** 3 * curve.from[k] + 3 * s * s * t * curve.c1[k] + 3 * s * t * t * curve.c2[k] + t ** 3 * curve.to[k];
    return { x: mix('x'), y: mix('y') };
  };
  return Array.from({ length: count }, (_, i) => [at(i / count), at((i + 1) / count)] as const);
}

/** The letters at a tick: beyond its end or beside it; none where another tick is as near, and only numbers tell. */
function lettersAt(tick: ReadLine, { letters, lines }: Sheet): readonly string[] {
  const others = lines.filter((other) => isTick(other) && other !== tick);
  if (others.some((other) => [tick.from, tick.to].some((end) => toLine(end, other) < 8))) return [];
  return letters
    .filter(({ at, number }) => {
      const away = (line: ReadLine): number => Math.min(toLine(at, line), toLine(number, line));
      const far = away(tick);
      return far < 6 && others.every((other) => away(other) > far + 1);
    })
    .map(({ text }) => text);
}

function toLine(p: P, { from, to }: { readonly from: P; readonly to: P }): number {
  const along = minus(to, from);
  const k = Math.min(1, Math.max(0, dot(minus(p, from), along) / Math.max(1e-12, dot(along, along))));
  return length(minus(p, plus(from, along, k)));
}

/** The blade runs beside a straightedge that is laid on its own dashed line. */
function alongStraightedge(line: ReadLine, way: P, head: Head, edge: Straightedge, { lines }: Sheet): P {
  const left = leftOf(way);
  // On its usual cut the head has the border on the other hand than the opening.
  const onLeft = (edge.on === 'opening') === (head.opening === 'left');
  const laid = lines.filter(
    (other) => dashed(other.dash, ...STRAIGHTEDGE) && Math.abs(dot(unit(minus(other.to, other.from)), left)) < 1e-3,
  );
  const wished = plus(line.from, left, onLeft ? edge.offset : -edge.offset);
  const off = (other: ReadLine): number => Math.abs(dot(minus(other.from, wished), left));
  const nearest = laid.reduce<ReadLine | undefined>(
    (best, other) => (best === undefined || off(other) < off(best) ? other : best),
    undefined,
  );
  if (nearest === undefined || off(nearest) > 1) throw new Error('no straightedge is drawn on its side of the line');
  return plus(line.from, left, dot(minus(nearest.from, line.from), left) + (onLeft ? -edge.offset : edge.offset));
}
