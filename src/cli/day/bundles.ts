import { MOST_PAGES } from '../../day/papers/paper.ts';

/** The patterns of one job. */
export interface Patterns {
  readonly at: number;
  readonly pages: number;
  /** Of all that they are made of. */
  readonly key: string;
  /** Where they were made in this run. */
  readonly packed?: Uint8Array;
}

/**
 * Puts jobs together in the day's order until a file is full, and hands each bundle on as soon as it is: so never more
 * than a file's pages wait, however many jobs there are.
 */
export class Bundles {
  readonly #waiting = new Map<number, Patterns | undefined>();
  readonly #full: (bundle: readonly Patterns[]) => void;
  #next = 0;
  #open: Patterns[] = [];

  constructor(full: (bundle: readonly Patterns[]) => void) {
    this.#full = full;
  }

  /** What became of the job at a place; undefined where it has no patterns, or is left out. */
  add(at: number, patterns: Patterns | undefined): void {
    this.#waiting.set(at, patterns);
    while (this.#waiting.has(this.#next)) {
      const next = this.#waiting.get(this.#next);
      this.#waiting.delete(this.#next);
      this.#next += 1;
      if (next === undefined) continue;
      const pages = this.#open.reduce((sum, each) => sum + each.pages, 0);
      if (pages > 0 && pages + next.pages > MOST_PAGES) this.close();
      this.#open.push(next);
    }
  }

  /** What is left makes the last one. */
  close(): void {
    const bundle = this.#open;
    this.#open = [];
    if (bundle.length > 0) this.#full(bundle);
  }
}
