/**
 * Systems of linear equations that grow one equation at a time. A system is kept in reduced form: every row has a
 * pivot variable that no other row holds. Adding an equation never changes the system that it is added to.
 */

export interface Equation {
  readonly terms: ReadonlyMap<string, number>;
  readonly value: number;
}

interface Row {
  readonly pivot: string;
  /** The pivot's coefficient is 1. */
  readonly terms: ReadonlyMap<string, number>;
  readonly value: number;
  /** The row as a combination of the equations that were added. */
  readonly from: ReadonlyMap<Equation, number>;
}

export interface System {
  readonly rows: readonly Row[];
}

export type Addition =
  | { readonly added: true; readonly system: System }
  | {
      readonly added: false;
      /** The equation's value less what the others make of its left side. */
      readonly residual: number;
      /** How often it and those that together settle its left side are taken: their left sides then cancel out. */
      readonly taken: ReadonlyMap<Equation, number>;
    };

/** Below this a coefficient is a rounding error: the coefficients of sizes are 1, 2 or a weighting near 1. */
const NOTHING = 1e-9;

export const EMPTY: System = { rows: [] };

export function equation(terms: Readonly<Record<string, number>>, value: number): Equation {
  return { terms: new Map(Object.entries(terms)), value };
}

function withMultiple<K>(base: ReadonlyMap<K, number>, other: ReadonlyMap<K, number>, factor: number): Map<K, number> {
  const sum = new Map(base);
  for (const [key, amount] of other) {
    const total = (sum.get(key) ?? 0) + factor * amount;
    if (Math.abs(total) < NOTHING) sum.delete(key);
    else sum.set(key, total);
  }
  return sum;
}

/** The row without the pivot of `other`. */
function without<R extends Omit<Row, 'pivot'>>(row: R, other: Row): R {
  const factor = -(row.terms.get(other.pivot) ?? 0);
  if (factor === 0) return row;
  return {
    ...row,
    terms: withMultiple(row.terms, other.terms, factor),
    value: row.value + factor * other.value,
    from: withMultiple(row.from, other.from, factor),
  };
}

/** Adds an equation where it says something new, otherwise tells how well it agrees. */
export function add(system: System, added: Equation): Addition {
  let rest: Omit<Row, 'pivot'> = { terms: added.terms, value: added.value, from: new Map([[added, 1]]) };
  for (const row of system.rows) rest = without(rest, row);
  let pivot: string | undefined;
  let greatest = NOTHING;
  for (const [variable, factor] of rest.terms) {
    if (Math.abs(factor) > greatest) [pivot, greatest] = [variable, Math.abs(factor)];
  }
  if (pivot === undefined) {
    return { added: false, residual: rest.value, taken: rest.from };
  }
  const factor = 1 / rest.terms.get(pivot)!;
  const row: Row = {
    pivot,
    terms: withMultiple(new Map(), rest.terms, factor),
    value: rest.value * factor,
    from: withMultiple(new Map(), rest.from, factor),
  };
  return { added: true, system: { rows: [...system.rows.map((each) => without(each, row)), row] } };
}

/** Adds each equation that says something new and passes over the others. */
export function addAll(system: System, equations: readonly Equation[]): System {
  let grown = system;
  for (const each of equations) {
    const addition = add(grown, each);
    if (addition.added) grown = addition.system;
  }
  return grown;
}

/** What a variable is, or undefined where the system leaves it open. */
export const solvedValue = (system: System, variable: string): number | undefined => settled(system, variable)?.value;

/** How often each equation is taken to make a variable, or undefined where the system leaves it open. */
export const settledBy = (system: System, variable: string): ReadonlyMap<Equation, number> | undefined =>
  settled(system, variable)?.from;

function settled(system: System, variable: string): Row | undefined {
  const row = system.rows.find((each) => each.pivot === variable);
  return row?.terms.size === 1 ? row : undefined;
}
