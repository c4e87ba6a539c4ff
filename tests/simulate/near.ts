import type { P } from '../cutfiles/points.ts';

/** Straight pieces put into squares, so that the nearest is found without looking at all. */
export class Near {
  readonly #cells = new Map<number, number[]>();
  readonly #pieces: (readonly [P, P])[] = [];
  readonly #size: number;

  /** `size`: how far off a piece is still found. */
  constructor(size: number) {
    this.#size = size;
  }

  chain(points: readonly P[], closed: boolean): this {
    for (let i = 0; i + (closed ? 0 : 1) < points.length; i++) this.piece(points[i]!, points[(i + 1) % points.length]!);
    return this;
  }

  piece(a: P, b: P): this {
    const index = this.#pieces.push([a, b]) - 1;
    const count = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / this.#size) + 1;
    for (let n = 0; n <= count; n++) {
      const key = this.#key(a.x + ((b.x - a.x) * n) / count, a.y + ((b.y - a.y) * n) / count, 0, 0);
      const cell = this.#cells.get(key);
      if (cell === undefined) this.#cells.set(key, [index]);
      else if (cell.at(-1) !== index) cell.push(index);
    }
    return this;
  }

  #key(x: number, y: number, right: number, down: number): number {
    return (Math.floor(x / this.#size) + right + 50_000) * 100_000 + Math.floor(y / this.#size) + down + 50_000;
  }

  /** Exact up to the size of a square; that where nothing is so near. */
  distance(p: P): number {
    let best = this.#size;
    for (const right of [-1, 0, 1])
      for (const down of [-1, 0, 1])
        for (const i of this.#cells.get(this.#key(p.x, p.y, right, down)) ?? []) {
          const [a, b] = this.#pieces[i]!;
          const [dx, dy] = [b.x - a.x, b.y - a.y];
          const square = dx * dx + dy * dy;
          const k = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
          best = Math.min(best, Math.hypot(p.x - a.x - k * dx, p.y - a.y - k * dy));
        }
    return best;
  }
}

/** A closed outline by bands of height, so that a point asks only the sides at its own height whether it lies within. */
export class Within {
  readonly #bands = new Map<number, (readonly [P, P])[]>();
  readonly #tall: number;

  constructor(points: readonly P[], tall = 0.5) {
    this.#tall = tall;
    for (const [i, a] of points.entries()) {
      const b = points[(i + 1) % points.length]!;
      const [first, last] = [Math.min(a.y, b.y), Math.max(a.y, b.y)].map((y) => Math.floor(y / tall)) as [
        number,
        number,
      ];
      for (let n = first; n <= last; n++) {
        const band = this.#bands.get(n);
        if (band === undefined) this.#bands.set(n, [[a, b]]);
        else band.push([a, b]);
      }
    }
  }

  /** Even-odd. */
  holds({ x, y }: P): boolean {
    let odd = false;
    for (const [a, b] of this.#bands.get(Math.floor(y / this.#tall)) ?? [])
      if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) odd = !odd;
    return odd;
  }
}

/** Points of a way no farther apart than `step`, its own among them. */
export function along(points: readonly P[], step: number, closed: boolean): readonly P[] {
  return points.flatMap((a, i) => {
    const b = points[i + 1] ?? (closed ? points[0]! : undefined);
    if (b === undefined) return [a];
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / step));
    return Array.from({ length: count }, (_, n) => ({
      x: a.x + ((b.x - a.x) * n) / count,
      y: a.y + ((b.y - a.y) * n) / count,
    }));
  });
}
