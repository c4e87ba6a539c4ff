import { find, type Node } from '../read/text/node.ts';
import { UNITS } from '../shop/defaults.ts';
import type { Units } from '../units/units.ts';
import { LENGTH_UNITS } from '../units/units.ts';

/** The unit of the document's bare numbers, needed before the rest is checked; the usual one where it is none. */
export function unitsOf(root: Node): Units {
  const { node, whole } = find(root, ['units']);
  if (!whole || node.kind !== 'scalar') return UNITS;
  return LENGTH_UNITS.find((unit) => unit === node.value) ?? UNITS;
}
