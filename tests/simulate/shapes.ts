import type { P } from '../cutfiles/points.ts';
import { type Figure, type Piece, plus } from './figure.ts';

/** The words of a job for a shape, and its outline in a frame from 0 0, drawn anew from what the words mean. */
export interface Shape {
  readonly words: string;
  readonly figure: (width: number, height: number) => Figure;
  /** Width over height, where only one will do. */
  readonly aspect?: number;
}

const at = (x: number, y: number): P => ({ x, y });

const closed = (corners: readonly P[]): Figure => ({
  kind: 'pieces',
  pieces: corners.map((from, i): Piece => ({ kind: 'line', from, to: corners[(i + 1) % corners.length]! })),
});

/** The same at all four corners: `first` quarter from the middle of the top side on, for the upper right corner. */
function fourfold(width: number, height: number, corner: readonly P[]): readonly P[] {
  // Points of the upper right corner, as distances from it along both sides: (in from the right, down from the top).
  const upperRight = corner.map(({ x, y }) => at(width - x, y));
  const lowerRight = corner.toReversed().map(({ x, y }) => at(width - x, height - y));
  const lowerLeft = corner.map(({ x, y }) => at(x, height - y));
  const upperLeft = corner.toReversed().map(({ x, y }) => at(x, y));
  return [...upperRight, ...lowerRight, ...lowerLeft, ...upperLeft];
}

const rectangle: Shape = {
  words: 'shape: rectangle',
  figure: (w, h) => closed([at(0, 0), at(w, 0), at(w, h), at(0, h)]),
};

const rounded = (radius: number): Shape => ({
  words: `shape: rounded, radius: ${radius}`,
  figure: (w, h) => {
    const pieces: Piece[] = [];
    const arc = (from: P, to: P, centre: P): void =>
      void pieces.push({ kind: 'arc', from, to, centre, clockwise: true });
    const line = (from: P, to: P): void => void pieces.push({ kind: 'line', from, to });
    line(at(radius, 0), at(w - radius, 0));
    arc(at(w - radius, 0), at(w, radius), at(w - radius, radius));
    line(at(w, radius), at(w, h - radius));
    arc(at(w, h - radius), at(w - radius, h), at(w - radius, h - radius));
    line(at(w - radius, h), at(radius, h));
    arc(at(radius, h), at(0, h - radius), at(radius, h - radius));
    line(at(0, h - radius), at(0, radius));
    arc(at(0, radius), at(radius, 0), at(radius, radius));
    return { kind: 'pieces', pieces };
  },
});

const clipped = (clip: number): Shape => ({
  words: `shape: clipped, clip: ${clip}`,
  figure: (w, h) => closed(fourfold(w, h, [at(clip, 0), at(0, clip)])),
});

const notched = (notch: number, steps: number): Shape => ({
  words: `shape: notched, notch: ${notch}, steps: ${steps}`,
  figure: (w, h) => {
    const corner = [at(steps * notch, 0)];
    for (let k = 1; k <= steps; k++)
      corner.push(at((steps + 1 - k) * notch, k * notch), at((steps - k) * notch, k * notch));
    return closed(fourfold(w, h, corner));
  },
});

const oval: Shape = {
  words: 'shape: oval',
  figure: (w, h) => ({ kind: 'oval', centre: at(w / 2, h / 2), a: w / 2, b: h / 2, by: 0 }),
};

const circle: Shape = { ...oval, words: 'shape: circle', aspect: 1 };

/** Sides and sill under an arc that rises by so much above them. */
const arch = (words: string, riseOf: (width: number) => number): Shape => ({
  words,
  figure: (w, h) => {
    const rise = riseOf(w);
    const radius = rise / 2 + (w * w) / (8 * rise);
    const [left, right] = [at(0, rise), at(w, rise)];
    const pieces: readonly Piece[] = [
      { kind: 'arc', from: left, to: right, centre: at(w / 2, radius), clockwise: true },
      { kind: 'line', from: right, to: at(w, h) },
      { kind: 'line', from: at(w, h), to: at(0, h) },
      { kind: 'line', from: at(0, h), to: left },
    ];
    return { kind: 'pieces', pieces };
  },
});

/** Regular, standing on a side (or a corner): as large as its frame, whose proportions it has. */
function regular(sides: number, stands: 'side' | 'corner'): Shape {
  const from = stands === 'corner' ? Math.PI / 2 : Math.PI / 2 + Math.PI / sides;
  const all = Array.from({ length: sides }, (_, i) => {
    const angle = from + (2 * Math.PI * i) / sides;
    return at(Math.cos(angle), Math.sin(angle));
  });
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top];
  return {
    words: `shape: polygon, sides: ${sides}, stands: ${stands}`,
    figure: (w) => closed(all.map((p) => at(((p.x - left) * w) / wide, ((p.y - top) * w) / wide))),
    aspect: wide / high,
  };
}

/** Corners as they are given, from 0 0 to 100 100, clockwise. */
const free = (corners: readonly (readonly [number, number])[]): Shape => ({
  words: `shape: outline, outline: "${corners.map(([x, y]) => `${x},${y}`).join(' ')}"`,
  figure: (w, h) => closed(corners.map(([x, y]) => plus(at(0, 0), at((x * w) / 100, (y * h) / 100)))),
});

export const SHAPES: readonly Shape[] = [
  rectangle,
  rectangle,
  rounded(14),
  clipped(21),
  notched(11, 1),
  notched(9, 2),
  oval,
  circle,
  arch('shape: round-arch', (w) => w / 2),
  arch('shape: arch, rise: 18', () => 18),
  regular(3, 'side'),
  regular(6, 'side'),
  regular(5, 'corner'),
  free([
    [0, 0],
    [100, 0],
    [70, 100],
    [20, 100],
  ]),
  free([
    [0, 30],
    [55, 0],
    [100, 40],
    [80, 100],
    [10, 90],
  ]),
  // With a corner that points into the opening.
  free([
    [0, 0],
    [100, 0],
    [100, 100],
    [50, 55],
    [0, 100],
  ]),
];
