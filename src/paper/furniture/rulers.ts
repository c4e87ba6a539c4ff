import type { Item, LineItem } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { defined } from '../../problems/defined.ts';
import { once } from '../../problems/once.ts';
import { type Block, turnedBlock } from '../../text/block.ts';
import { capHeight, depthOf, set } from '../../text/line.ts';
import { FINE } from '../../text/styles.ts';
import { mmFromInches } from '../../units/units.ts';

const AROUND = 2.2;

/** Lengths that a ruler may have: mm below, inches above. */
const LENGTHS = [
  { mm: 50, inches: 2 },
  { mm: 30, inches: 1 },
  { mm: 20, inches: 0.5 },
] as const;

/** Rulers, the longest first; which of them fits is the sheet's business. */
export interface Rulers {
  readonly level: readonly (() => Block)[];
  readonly upright: readonly (() => Block)[];
}

const KNOWN = new WeakMap<Fonts, Rulers>();

/** Drawn once for all sheets. */
export function rulersOf(fonts: Fonts): Rulers {
  const known = KNOWN.get(fonts);
  if (known !== undefined) return known;
  const level = LENGTHS.map(({ mm, inches }) => once(() => ruler(mm, inches, fonts)));
  const made = { level, upright: level.map((block) => once(() => turnedBlock(block(), 270))) };
  KNOWN.set(fonts, made);
  return made;
}

/**
 * A level ruler: whole millimetres below its backbone, eighths of an inch above. Its ticks are exact: the first
 * stands at the left end, the last at the end of what its number says.
 */
function ruler(mm: number, inches: number, fonts: Fonts): Block {
  const [high, deep] = [capHeight(FINE, fonts), depthOf(FINE, fonts)];
  const left = AROUND;
  const line = high + deep + 0.8 + 3.2;
  const items: Item[] = [];
  const tick = (x: number, length: number, id?: string): LineItem => ({
    kind: 'line',
    pen: 'tick',
    from: { x: left + x, y: line },
    to: { x: left + x, y: line + length },
    ...defined({ id }),
  });
  const long = Math.max(mm, mmFromInches(inches));
  items.push({ kind: 'line', pen: 'ruler', from: { x: left, y: line }, to: { x: left + long, y: line } });
  for (let i = 0; i <= mm; i++) items.push(tick(i, i % 10 === 0 ? 3.2 : i % 5 === 0 ? 2.2 : 1.3, `ruler-${i}mm`));
  for (let i = 0; i <= inches * 8; i++) {
    items.push(tick(mmFromInches(i / 8), i % 8 === 0 ? -3.2 : i % 4 === 0 ? -2.4 : i % 2 === 0 ? -1.8 : -1.1));
  }
  const number = (text: string, x: number, y: number) => items.push(set(text, left + x, y, FINE, 'middle'));
  const [above, below] = [line - 4, line + 3.2 + 0.8 + high];
  for (let i = 0; i <= mm; i += 10) number(i === mm ? `${i} mm` : `${i}`, i, below);
  for (let i = 0; i <= inches; i++)
    number(i === Math.floor(inches) && inches >= 1 ? `${i} in` : `${i}`, mmFromInches(i), above);
  if (inches < 1) number('1/2 in', mmFromInches(inches), above);
  return { width: left + long + 5, height: below + deep, items };
}
