import { find, type Node } from '../read/text/node.ts';
import { LENGTH_UNITS, mmFromInches, type Units } from '../units/units.ts';

/** The unit of bare numbers where none is named: the trade's stock sizes are inches (common practice, no source). */
export const UNITS: Units = 'in';

/** The unit of the document's bare numbers, needed before the rest is checked; the usual one where it is none. */
export function unitsOf(root: Node): Units {
  const { node, whole } = find(root, ['units']);
  if (!whole || node.kind !== 'scalar') return UNITS;
  return LENGTH_UNITS.find((unit) => unit === node.value) ?? UNITS;
}

export const metric = (units: Units): boolean => units !== 'in';

/** A default, mm: the round inch where bare numbers are inches, else the round metric length beside it. */
export const either = (units: Units, inches: number, mm: number): number => (metric(units) ? mm : mmFromInches(inches));
