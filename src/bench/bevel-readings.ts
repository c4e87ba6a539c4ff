import type { Readings } from '../job/readings.ts';
import { fail, type Result, succeed } from '../problems/problem.ts';
import { BEVEL } from '../shop/bevel-angle.ts';
import { calibrateBevel } from './calibrate-bevel.ts';
import { type Context, kept, nameProblems, type Outcome, rounded } from './outcome.ts';

/** Outside this many of its own uncertainties an angle is another one. */
const CLEARLY = 2;

/** The true angle of a head's bevel; the shop's file is changed only where it clearly says another. */
export function fromBevelReadings(readings: Readings<'bevel'>, { shop, date }: Context): Result<Outcome> {
  const wrong = nameProblems('head', readings.head, [...(shop?.heads.keys() ?? [])]);
  if (wrong.length > 0) return fail(wrong);
  const solved = calibrateBevel(readings.strips);
  if (!solved.ok) return solved;
  const { angle, uncertainty, strips } = solved.value;
  const said = shop?.heads.get(readings.head)?.bevel ?? BEVEL;
  const other = Math.abs(angle - said) > CLEARLY * uncertainty;
  const found = `${angle.toFixed(1)}° ± ${uncertainty.toFixed(1)}°`;
  const bevel = rounded(angle, 1);
  const result = other ? `bevel ${found}` : `bevel ${found}, the ${said}° that it is set to`;
  const words = [
    `head ${readings.head}: the bevel is ${found}`,
    ...strips.map((strip, i) => `  strip ${i + 1}: ${strip.angle.toFixed(1)}° ± ${strip.uncertainty.toFixed(1)}°`),
    other
      ? `  the shop's file said ${said}°: it now says ${bevel}°, and every setback follows it`
      : `  that is the ${said}° that it is set to, as far as it can be read; nothing changes`,
  ];
  const entry = { ...kept({ ...readings, date: readings.date ?? date }, ['thickness', 'setback']), result };
  return succeed(
    {
      words,
      result: { head: readings.head, angle, uncertainty, strips, changed: other },
      edits: [
        ...(other ? [{ kind: 'set', path: ['heads', readings.head], values: { bevel } } as const] : []),
        { kind: 'append', path: ['calibrations', 'bevel'], value: entry },
      ],
    },
    solved.warnings,
  );
}
