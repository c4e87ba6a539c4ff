import { arcCubics } from '../geometry/arc-cubics.ts';
import type { Segment } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/** One outline as it was written, not yet closed or turned. */
export interface ReadPath {
  readonly start: Point;
  readonly segments: readonly Segment[];
}

export interface Refused {
  readonly message: string;
  readonly hint: string;
}

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const SPACE = /[\s,]*/y;
/** How many numbers each command takes (SVG 2, the d property). */
const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };
/** Relative to the size of its arc; what is made of an ellipse is a curve. */
const FINE = 1e-6;
const MOST_SEGMENTS = 2000;

interface Command {
  readonly letter: string;
  readonly numbers: readonly number[];
}

/** Reads SVG path data, or a list of corners `x,y x,y …`, as one outline. */
export function readPathData(text: string): ReadPath | Refused {
  const trimmed = text.trim();
  const commands = /^[Mm]/.test(trimmed) ? commandsOf(trimmed) : cornersOf(trimmed);
  const parts = 'message' in commands ? commands : partsOf(commands);
  if ('message' in parts) return parts;
  const [one, ...others] = parts;
  if (one === undefined) return refused('the outline is empty', WRITE);
  return others.length === 0 ? one : refused('the outline has several parts', 'give one outline for each opening');
}

/** Reads SVG path data of any number of parts, closed or not. */
export function readPathParts(text: string): readonly ReadPath[] | Refused {
  const trimmed = text.trim();
  if (trimmed === '') return [];
  if (!/^[Mm]/.test(trimmed)) return refused('path data begins with M', WRITE);
  const commands = commandsOf(trimmed);
  return 'message' in commands ? commands : partsOf(commands);
}

const tooMany = (): Refused => refused(`the outline has more than ${MOST_SEGMENTS} parts`, 'simplify it');

const refused = (message: string, hint: string): Refused => ({ message, hint });
const WRITE = 'write SVG path data such as M0 0 L6 0 L3 5 Z, or a list of corners such as 0,0 6,0 3,5';

function cornersOf(text: string): readonly Command[] | Refused {
  const numbers = text.split(/[\s,]+/).filter((part) => part !== '');
  const values = numbers.map(Number);
  const wrong = numbers.find((_, i) => !Number.isFinite(values[i]));
  if (wrong !== undefined) return refused(`${JSON.stringify(wrong.slice(0, 20))} is not a number of an outline`, WRITE);
  if (values.length < 6 || values.length % 2 !== 0) {
    return refused(`the outline has ${values.length} numbers, at least three corners of two numbers are needed`, WRITE);
  }
  if (values.length / 2 > MOST_SEGMENTS) return tooMany();
  return [
    { letter: 'M', numbers: values.slice(0, 2) },
    ...Array.from({ length: values.length / 2 - 1 }, (_, i) => ({
      letter: 'L',
      numbers: values.slice(2 * i + 2, 2 * i + 4),
    })),
    { letter: 'Z', numbers: [] },
  ];
}

function commandsOf(text: string): readonly Command[] | Refused {
  const commands: Command[] = [];
  let at = 0;
  const skip = (): void => {
    SPACE.lastIndex = at;
    SPACE.exec(text);
    at = SPACE.lastIndex;
  };
  skip();
  let letter = '';
  while (at < text.length) {
    if (/[A-Za-z]/.test(text[at]!)) {
      letter = text[at]!;
      at++;
      if (TAKES[letter.toUpperCase()] === undefined)
        return refused(`${letter} is no command of an outline`, `known are ${Object.keys(TAKES).join(' ')}; ${WRITE}`);
    } else if (TAKES[letter.toUpperCase()] === 0) {
      return refused('the outline goes on after it is closed', 'give one outline, closed by Z at its end');
    }
    const takes = TAKES[letter.toUpperCase()]!;
    const numbers: number[] = [];
    while (numbers.length < takes) {
      skip();
      const isFlag = letter.toUpperCase() === 'A' && (numbers.length === 3 || numbers.length === 4);
      const match = isFlag ? /^[01]/.exec(text.slice(at, at + 1)) : numberAt(text, at);
      if (match === null)
        return refused(`${letter} takes ${takes} numbers, ${numbers.length} are there that can be read`, WRITE);
      numbers.push(Number(match[0]));
      at += match[0].length;
    }
    commands.push({ letter, numbers });
    if (commands.length > MOST_SEGMENTS) return tooMany();
    // Further pairs after a move are lines.
    if (letter === 'M') letter = 'L';
    if (letter === 'm') letter = 'l';
    skip();
  }
  return commands;
}

function numberAt(text: string, at: number): RegExpExecArray | null {
  NUMBER.lastIndex = at;
  return NUMBER.exec(text);
}

function partsOf(commands: readonly Command[]): readonly ReadPath[] | Refused {
  const parts: { start: Point; segments: Segment[] }[] = [];
  let segments: Segment[] = [];
  let start: Point = { x: 0, y: 0 };
  let at: Point = start;
  let handle: { readonly kind: 'C' | 'Q'; readonly at: Point } | undefined;
  for (const { letter, numbers } of commands) {
    const kind = letter.toUpperCase();
    const relative = letter !== kind;
    const point = (i: number): Point => ({
      x: numbers[i]! + (relative ? at.x : 0),
      y: numbers[i + 1]! + (relative ? at.y : 0),
    });
    if (kind === 'M') {
      at = point(0);
      start = at;
      segments = [];
      parts.push({ start, segments });
      handle = undefined;
      continue;
    }
    const mirrored = (of: 'C' | 'Q'): Point =>
      handle?.kind === of ? { x: 2 * at.x - handle.at.x, y: 2 * at.y - handle.at.y } : at;
    let next: typeof handle;
    switch (kind) {
      case 'L':
        segments.push({ kind: 'line', to: point(0) });
        break;
      case 'H':
        segments.push({ kind: 'line', to: { x: numbers[0]! + (relative ? at.x : 0), y: at.y } });
        break;
      case 'V':
        segments.push({ kind: 'line', to: { x: at.x, y: numbers[0]! + (relative ? at.y : 0) } });
        break;
      case 'C':
        segments.push({ kind: 'cubic', c1: point(0), c2: point(2), to: point(4) });
        next = { kind: 'C', at: point(2) };
        break;
      case 'S':
        segments.push({ kind: 'cubic', c1: mirrored('C'), c2: point(0), to: point(2) });
        next = { kind: 'C', at: point(0) };
        break;
      case 'Q':
      case 'T': {
        const c = kind === 'Q' ? point(0) : mirrored('Q');
        segments.push(quadratic(at, c, point(kind === 'Q' ? 2 : 0)));
        next = { kind: 'Q', at: c };
        break;
      }
      case 'A':
        segments.push(...arcOf(at, numbers, point(5)));
        break;
      default:
        segments.push({ kind: 'line', to: start });
    }
    handle = next;
    at = segments.at(-1)!.to;
  }
  // What is made of an ellipse is many curves.
  return parts.reduce((sum, part) => sum + part.segments.length, 0) > MOST_SEGMENTS ? tooMany() : parts;
}

/** The same curve with its degree raised by one. */
function quadratic(from: Point, c: Point, to: Point): Segment {
  const towards = (p: Point): Point => ({ x: p.x + (2 / 3) * (c.x - p.x), y: p.y + (2 / 3) * (c.y - p.y) });
  return { kind: 'cubic', c1: towards(from), c2: towards(to), to };
}

/** From ends to centre as SVG 2, appendix B.2.4, has it; a circular arc stays an arc, an elliptical one becomes cubics. */
function arcOf(from: Point, numbers: readonly number[], to: Point): readonly Segment[] {
  let [rx, ry] = [Math.abs(numbers[0]!), Math.abs(numbers[1]!)];
  const [turn, large, clockwise] = [(numbers[2]! * Math.PI) / 180, numbers[3] === 1, numbers[4] === 1];
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return [{ kind: 'line', to }];
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  // In a frame where the ellipse is a circle of radius 1.
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  const flat = { x: cos * half.x + sin * half.y, y: -sin * half.x + cos * half.y };
  const reach = Math.hypot(flat.x / rx, flat.y / ry);
  if (reach > 1) [rx, ry] = [rx * reach, ry * reach];
  const u = { x: flat.x / rx, y: flat.y / ry };
  const square = Math.min(1, u.x * u.x + u.y * u.y);
  const k = (large === clockwise ? -1 : 1) * Math.sqrt(Math.max(0, 1 - square) / square);
  const middle = { x: k * u.y, y: -k * u.x };
  const place = (p: Point): Point => ({
    x: (from.x + to.x) / 2 + cos * rx * p.x - sin * ry * p.y,
    y: (from.y + to.y) / 2 + sin * rx * p.x + cos * ry * p.y,
  });
  if (Math.abs(rx - ry) <= 1e-9 * rx) return [{ kind: 'arc', to, centre: place(middle), clockwise }];
  const round = { kind: 'arc' as const, to: { x: -u.x, y: -u.y }, centre: middle, clockwise };
  return arcCubics(u, round, FINE).map((segment) => ({
    kind: 'cubic',
    c1: place(segment.c1),
    c2: place(segment.c2),
    to: place(segment.to),
  }));
}
