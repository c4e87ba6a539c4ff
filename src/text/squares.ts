import { type Box, bottom, right } from '../geometry/box.ts';

/** Wide enough that most words touch few squares, narrow enough that a square holds few things. */
const SIDE = 16;

/** What lies on a sheet by squares of it, so that asking costs what lies near and not all there is. */
export class Squares<T> {
  readonly #things = new Map<number, T[]>();

  get isEmpty(): boolean {
    return this.#things.size === 0;
  }

  /** `within` says which of the squares under `area` it really lies in; all of them without it. */
  add(thing: T, area: Box, within?: (square: Box) => boolean): void {
    for (let row = first(area.y); row <= first(bottom(area)); row++) {
      for (let column = first(area.x); column <= first(right(area)); column++) {
        if (within !== undefined && !within(squareOf(row, column))) continue;
        const key = keyOf(row, column);
        const there = this.#things.get(key);
        if (there === undefined) this.#things.set(key, [thing]);
        else there.push(thing);
      }
    }
  }

  /** The first near an area for which `is` holds. */
  find(area: Box, is: (thing: T) => boolean): T | undefined {
    // Asked ten thousand times for one pattern, so it calls little.
    const things = this.#things;
    const x0 = Math.floor(area.x / SIDE);
    const columns = Math.floor((area.x + area.width) / SIDE) - x0;
    const y1 = Math.floor((area.y + area.height) / SIDE);
    for (let row = Math.floor(area.y / SIDE); row <= y1; row++) {
      const start = keyOf(row, x0);
      for (let key = start; key <= start + columns; key++) {
        const there = things.get(key);
        if (there === undefined) continue;
        for (let i = 0; i < there.length; i++) if (is(there[i]!)) return there[i];
      }
    }
    return undefined;
  }

  /** All near an area, each once. */
  near(area: Box, within: (square: Box) => boolean = () => true): ReadonlySet<T> {
    const found = new Set<T>();
    for (let row = first(area.y); row <= first(bottom(area)); row++) {
      for (let column = first(area.x); column <= first(right(area)); column++) {
        const there = this.#things.get(keyOf(row, column));
        if (there !== undefined && within(squareOf(row, column))) for (const thing of there) found.add(thing);
      }
    }
    return found;
  }
}

/** Neighbours in a row follow one another. */
const keyOf = (row: number, column: number): number => row * 65536 + column;

/** The first square of a row or a column that reaches there. */
const first = (at: number): number => Math.floor(at / SIDE);

const squareOf = (row: number, column: number): Box => ({ x: column * SIDE, y: row * SIDE, width: SIDE, height: SIDE });
