import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { Plain } from '../read/edit/yaml-print.ts';
import type { Machine, MachineKind } from '../shop/machine.ts';
import type { CouponKind } from '../shop/readings/readings.ts';
import { type Context, kept, nameProblems, type Outcome, rounded } from './outcome.ts';
import type { Readings } from './readings.ts';

/** What differs from its nominal by no more standard errors than this is taken to be it. */
export const CLEARLY = 2;

export interface Values {
  readonly [key: string]: Plain;
}

/** A caliper on ten strips reads finer than a hundredth. */
export const fine = (mm: number): string => `${rounded(mm, 3)} mm`;

export const give = (mm: number, by: number): string => `${mm.toFixed(3)} ± ${by.toFixed(3)} mm`;

/** The machine that is meant: one of the shop's, or undefined for one that is new to it. */
export function machineOf<K extends MachineKind>(
  name: string,
  kind: K,
  { shop }: Context,
): Result<Extract<Machine, { kind: K }> | undefined> {
  const machine = shop?.machines.get(name);
  if (machine === undefined) {
    const wrong = nameProblems('machine', name, [...(shop?.machines.keys() ?? [])]);
    return wrong.length > 0 ? fail(wrong) : succeed(undefined);
  }
  if (machine.kind === kind) return succeed(machine as Extract<Machine, { kind: K }>);
  const own = [...(shop?.machines.values() ?? [])].filter((each) => each.kind === kind).map(({ id }) => id);
  const hint = own.length === 0 ? 'is it the right name?' : `of that kind there is ${own.join(', ')}`;
  const message = `${name} is a machine of the kind ${machine.kind}, these are readings of a ${kind}`;
  return fail([error('coupon-machine-kind', ['machine'], message, hint)]);
}

interface Told {
  readonly values: Values;
  /** Keys of the readings that are lengths. */
  readonly lengths: readonly string[];
  readonly words: readonly string[];
  readonly result: object;
}

export function written(
  kind: CouponKind,
  readings: Readings<CouponKind>,
  { shop, date }: Context,
  { values, lengths, words, result }: Told,
  warnings: readonly Problem[],
): Result<Outcome> {
  const { machine } = readings;
  const its: MachineKind = kind === 'bevel-coupon' ? 'bevel' : kind;
  // A name that is its kind's own says it already.
  const named = shop?.machines.has(machine) === true || machine === its ? {} : { kind: its };
  const entry = { ...kept({ ...readings, date: readings.date ?? date }, lengths), result: words.slice(0, 3).join(';') };
  return succeed(
    {
      words,
      result: { machine, ...result },
      edits: [
        { kind: 'set', path: ['machines', machine], values: { ...named, ...values } },
        { kind: 'append', path: ['calibrations', kind], value: entry },
      ],
    },
    warnings,
  );
}
