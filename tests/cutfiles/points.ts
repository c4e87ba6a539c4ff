/** The tests' own geometry of points, written apart from the engine's. */
export interface P {
  readonly x: number;
  readonly y: number;
}

export const apart = (a: P, b: P): number => Math.hypot(a.x - b.x, a.y - b.y);

function toSegment(p: P, a: P, b: P): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/** A chain of points put into squares, so that the nearest of its segments is found without looking at all of them. */
export class Chain {
  readonly #cells = new Map<string, number[]>();
  readonly #points: readonly P[];
  readonly #size: number;

  constructor(points: readonly P[], size = 2) {
    this.#points = points;
    this.#size = size;
    for (let i = 0; i + 1 < points.length; i++) {
      const [a, b] = [points[i]!, points[i + 1]!];
      const steps = Math.ceil(apart(a, b) / size) + 1;
      for (let n = 0; n <= steps; n++) {
        const key = this.#key(a.x + ((b.x - a.x) * n) / steps, a.y + ((b.y - a.y) * n) / steps);
        const cell = this.#cells.get(key) ?? [];
        if (cell.at(-1) !== i) cell.push(i);
        this.#cells.set(key, cell);
      }
    }
  }

  #key(x: number, y: number): string {
    return `${Math.floor(x / this.#size)} ${Math.floor(y / this.#size)}`;
  }

  /** Exact up to the size of a square; more than that where nothing is so near. */
  distance(p: P): number {
    let best = this.#size;
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const i of this.#cells.get(this.#key(p.x + dx * this.#size, p.y + dy * this.#size)) ?? [])
          best = Math.min(best, toSegment(p, this.#points[i]!, this.#points[i + 1]!));
    return best;
  }
}

/** Even-odd. */
export function inside(points: readonly P[], p: P): boolean {
  let odd = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [a, b] = [points[i]!, points[j]!];
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) odd = !odd;
  }
  return odd;
}

/** The same way with points no farther apart than `step`; a closed one returns to its start. */
export function dense(points: readonly P[], step: number, closed: boolean): P[] {
  const all = closed ? [...points, points[0]!] : points;
  const found: P[] = [all[0]!];
  for (let i = 0; i + 1 < all.length; i++) {
    const [a, b] = [all[i]!, all[i + 1]!];
    const count = Math.max(1, Math.ceil(apart(a, b) / step));
    for (let n = 1; n <= count; n++)
      found.push({ x: a.x + ((b.x - a.x) * n) / count, y: a.y + ((b.y - a.y) * n) / count });
  }
  return found;
}

export const rectangle = (x: number, y: number, width: number, height: number): P[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
