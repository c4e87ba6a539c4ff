import type { LengthUnit } from '../../units/units.ts';

/** Builds once for each unit: a schema takes longer to build than a job to check, and never changes. */
export function byUnit<T>(build: (unit: LengthUnit) => T): (unit: LengthUnit) => T {
  const built = new Map<LengthUnit, T>();
  return (unit) => {
    const there = built.get(unit);
    if (there !== undefined) return there;
    const made = build(unit);
    built.set(unit, made);
    return made;
  };
}
