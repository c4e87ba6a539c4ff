import { polygon } from '../../geometry/path.ts';
import type { KnifeMachine } from '../../shop/machine.ts';
import { printDecimal } from '../../units/print.ts';
import type { Toolpath } from '../model.ts';
import { withLead } from '../toolpaths/lead.ts';

const SQUARES = 3;
const SIDE = 40;
const MARGIN = 5;

/**
 * How much a right corner is cut short along its bisector, over the offset, when nothing is allowed for. The tip follows
 * the axis on a tractrix; with the angle θ between blade and new direction the axis has gone −d·ln tan(θ/2) past the
 * corner, and the cut is nearest to the corner at θ = 45°: the loss is d·ln cot(π/8) / √2 (derived).
 */
export const CORNER_LOSS = -Math.log(Math.tan(Math.PI / 8)) / Math.SQRT2;

const around = ({ lead }: KnifeMachine, settle: number): number => MARGIN + lead + settle;

export function knifeCouponSize(
  machine: KnifeMachine,
  settle: number,
): { readonly width: number; readonly height: number } {
  const clear = around(machine, settle);
  return { width: SQUARES * (SIDE + clear) + clear, height: SIDE + 2 * clear };
}

/** Squares whose corners the axis takes sharply, as if the knife had no offset. */
export function knifeCoupon(machine: KnifeMachine, settle: number): readonly Toolpath[] {
  const clear = around(machine, settle);
  return Array.from({ length: SQUARES }, (_, i): Toolpath => {
    const [x, y] = [clear + i * (SIDE + clear), clear];
    const outline = polygon([
      { x, y },
      { x: x + SIDE, y },
      { x: x + SIDE, y: y + SIDE },
      { x, y: y + SIDE },
    ]);
    // Outside of a square there is room on every side.
    const path = withLead(outline, 'outside', { radius: machine.lead, settle, overcut: machine.overcut }) ?? outline;
    return { operation: 'outer', id: `square-${i + 1}`, reversible: false, path };
  });
}

export const KNIFE_STEPS: readonly string[] = [
  'Cut it from the board that will be used. Nothing is allowed for: the corners of the squares come out cut short.',
  'Measure of each square both sides at their middle and both diagonals, from corner to corner.',
  `offset = (1.4142 x side - diagonal) / ${printDecimal(2 * CORNER_LOSS, 'mm', 4).text}`,
  'Put the readings into a file, the keys sides and diagonals, and run: matwright calibrate knife FILE',
];
