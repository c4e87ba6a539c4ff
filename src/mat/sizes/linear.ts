/**
 * Systems of linear equations that grow one equation at a time. A system is kept in reduced form: every row has a
 * pivot variable that no other row holds.
 */

export interface Equation {
  readonly terms: ReadonlyMap<string, number>;
  readonly value: number;
}

interface Row {
  /** How many rows there were before it. */
  readonly number: number;
  /** The pivot's coefficient is 1. */
  readonly terms: Map<string, number>;
  value: number;
  /** The row as a combination of the equations that were added. */
  readonly from: Map<Equation, number>;
}

export type Addition =
  | { readonly added: true }
  | {
      readonly added: false;
      /** The equation's value less what the others make of its left side. */
      readonly residual: number;
      /** How often it and those that together settle its left side are taken, where that is traced: their left sides cancel out. */
      readonly taken: ReadonlyMap<Equation, number>;
    };

/** Below this a coefficient is a rounding error: the coefficients of sizes are 1, 2 or a weighting near 1. */
const NOTHING = 1e-9;

export function equation(terms: Readonly<Record<string, number>>, value: number): Equation {
  return { terms: new Map(Object.entries(terms)), value };
}

/** What is settled so far. */
export type System = Pick<Growing, 'value' | 'takenFor' | 'grown'>;

export class Growing {
  readonly #traced: boolean;
  /** By pivot. */
  readonly #rows = new Map<string, Row>();
  /** The pivots of the rows that hold a variable which is no pivot itself. */
  readonly #holders = new Map<string, Set<string>>();

  /** Untraced it does not keep what its rows were made from, which costs more than all the rest. */
  constructor(traced: boolean) {
    this.#traced = traced;
  }

  /** A system that goes on from here, this one staying as it is. */
  grown(): Growing {
    const copy = new Growing(this.#traced);
    for (const [pivot, { number, terms, value, from }] of this.#rows)
      copy.#rows.set(pivot, { number, terms: new Map(terms), value, from: new Map(from) });
    for (const [variable, pivots] of this.#holders) copy.#holders.set(variable, new Set(pivots));
    return copy;
  }

  /** Adds an equation where it says something new, otherwise tells how well it agrees. */
  add(added: Equation): Addition {
    const rest: Row = {
      number: this.#rows.size,
      terms: new Map(added.terms),
      value: added.value,
      from: new Map(this.#traced ? [[added, 1]] : []),
    };
    // In the order in which they came, so that roundings do not hang on how an equation is written.
    const known = [...added.terms].flatMap(([variable, factor]) => {
      const row = this.#rows.get(variable);
      return row === undefined ? [] : [{ row, factor }];
    });
    for (const { row, factor } of known.sort((a, b) => a.row.number - b.row.number)) addMultiple(rest, row, -factor);
    let pivot: string | undefined;
    let greatest = NOTHING;
    for (const [variable, factor] of rest.terms) {
      if (Math.abs(factor) > greatest) [pivot, greatest] = [variable, Math.abs(factor)];
    }
    if (pivot === undefined) return { added: false, residual: rest.value, taken: rest.from };
    this.#put(pivot, scaled(rest, 1 / rest.terms.get(pivot)!));
    return { added: true };
  }

  #put(pivot: string, row: Row): void {
    for (const holder of this.#holders.get(pivot) ?? []) {
      const other = this.#rows.get(holder)!;
      addMultiple(other, row, -other.terms.get(pivot)!);
      other.terms.delete(pivot);
      for (const variable of row.terms.keys()) {
        if (variable === pivot) continue;
        if (other.terms.has(variable)) this.#held(variable).add(holder);
        else this.#holders.get(variable)?.delete(holder);
      }
    }
    this.#holders.delete(pivot);
    this.#rows.set(pivot, row);
    for (const variable of row.terms.keys()) if (variable !== pivot) this.#held(variable).add(pivot);
  }

  #held(variable: string): Set<string> {
    const known = this.#holders.get(variable);
    if (known !== undefined) return known;
    const made = new Set<string>();
    this.#holders.set(variable, made);
    return made;
  }

  #settled(variable: string): Row | undefined {
    const row = this.#rows.get(variable);
    return row?.terms.size === 1 ? row : undefined;
  }

  /** What a variable is, or undefined where the system leaves it open. */
  value(variable: string): number | undefined {
    return this.#settled(variable)?.value;
  }

  /** How often each equation is taken to make a variable, where that is traced; undefined where the system leaves it open. */
  takenFor(variable: string): ReadonlyMap<Equation, number> | undefined {
    return this.#settled(variable)?.from;
  }
}

function addAmounts<K>(base: Map<K, number>, other: ReadonlyMap<K, number>, factor: number): void {
  for (const [key, amount] of other) {
    const total = (base.get(key) ?? 0) + factor * amount;
    if (Math.abs(total) < NOTHING) base.delete(key);
    else base.set(key, total);
  }
}

function addMultiple(row: Row, other: Row, factor: number): void {
  addAmounts(row.terms, other.terms, factor);
  addAmounts(row.from, other.from, factor);
  row.value += factor * other.value;
}

function scaled({ number, terms, value, from }: Row, by: number): Row {
  const made = { number, terms: new Map<string, number>(), value: value * by, from: new Map<Equation, number>() };
  addAmounts(made.terms, terms, by);
  addAmounts(made.from, from, by);
  return made;
}

/** Those equations that say something new; the others are passed over. */
export function systemFrom(equations: readonly Equation[], { traced = false } = {}): System {
  const growing = new Growing(traced);
  for (const each of equations) growing.add(each);
  return growing;
}
