import { resolve } from 'node:path';
import { DISK, type Disk, type Found } from './disk.ts';

/** What the file was read as. */
export type Role = 'job' | "shop's file" | "day's list" | 'picture' | 'readings file' | 'journal of plans';

export interface Input {
  readonly path: string;
  readonly role: Role;
}

/** Files that were read, so many that they are not all looked at again for each file that is written. */
export class Inputs {
  readonly #all = new Map<string, Input>();
  readonly #byPlace = new Map<string, Input[]>();
  readonly #byFile = new Map<string, Input[]>();

  constructor(inputs: readonly Input[] = []) {
    for (const { path, role } of inputs) this.add(path, role);
  }

  /** Each time it is read: another file may have come into its place. */
  add(file: string, role: Role): void {
    const path = resolve(file);
    const key = `${role} ${path}`;
    const input = this.#all.get(key) ?? { path, role };
    this.#all.set(key, input);
    const places = [path];
    try {
      const found = DISK.find(path);
      if (found !== undefined) note(this.#byFile, fileOf(found), input);
      places.push(DISK.real(path));
    } catch {
      // What is not there any more can only be known by its place.
    }
    for (const place of places) note(this.#byPlace, place, input);
  }

  has(file: string): boolean {
    return this.#byPlace.has(resolve(file));
  }

  /** Those that are now the file at a place: by the same way, a link, or a second name of it. */
  at(place: string, there: Found, disk: Disk): readonly Input[] {
    const near = [...(this.#byPlace.get(place) ?? []), ...(this.#byFile.get(fileOf(there)) ?? [])];
    return [...new Set(near)].filter(({ path }) => {
      const now = disk.find(path);
      return now !== undefined && fileOf(now) === fileOf(there);
    });
  }

  clear(): void {
    for (const each of [this.#all, this.#byPlace, this.#byFile]) each.clear();
  }
}

const fileOf = ({ dev, ino }: Found): string => `${dev} ${ino}`;

function note(lists: Map<string, Input[]>, key: string, input: Input): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [input]);
  else if (!list.includes(input)) list.push(input);
}
