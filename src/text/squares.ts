import { type Box, bottom, right } from '../geometry/box.ts';

/** Wide enough that most words touch few squares, narrow enough that a square holds few things. */
const SIDE = 16;

/** What lies on a sheet by squares of it, so that asking costs what lies near and not all there is. */
export class Squares<T> {
  readonly #things = new Map<number, T[]>();

  /** `within` says which of the squares under `area` it really lies in; all of them without it. */
  add(thing: T, area: Box, within: (square: Box) => boolean = () => true): void {
    for (const [key, square] of squares(area)) {
      if (!within(square)) continue;
      const there = this.#things.get(key);
      if (there === undefined) this.#things.set(key, [thing]);
      else there.push(thing);
    }
  }

  /** The first near an area for which `is` holds. */
  find(area: Box, is: (thing: T) => boolean): T | undefined {
    const [x0, x1] = [Math.floor(area.x / SIDE), Math.floor(right(area) / SIDE)];
    const [y0, y1] = [Math.floor(area.y / SIDE), Math.floor(bottom(area) / SIDE)];
    for (let row = y0; row <= y1; row++) {
      for (let column = x0; column <= x1; column++) {
        const found = this.#things.get(keyOf(row, column))?.find(is);
        if (found !== undefined) return found;
      }
    }
    return undefined;
  }

  /** All near an area, each once. */
  near(area: Box, within: (square: Box) => boolean = () => true): ReadonlySet<T> {
    const found = new Set<T>();
    for (const [key, square] of squares(area))
      if (within(square)) for (const thing of this.#things.get(key) ?? []) found.add(thing);
    return found;
  }
}

const keyOf = (row: number, column: number): number => row * 65536 + column;

function* squares(area: Box): Generator<readonly [number, Box]> {
  for (let row = Math.floor(area.y / SIDE); row <= Math.floor(bottom(area) / SIDE); row++)
    for (let column = Math.floor(area.x / SIDE); column <= Math.floor(right(area) / SIDE); column++)
      yield [keyOf(row, column), { x: column * SIDE, y: row * SIDE, width: SIDE, height: SIDE }];
}
