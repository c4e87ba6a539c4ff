import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Size } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import type { Machine } from '../../shop/machine.ts';
import { showSize } from '../../units/print.ts';
import { bevel } from '../bevel.ts';
import { cautions } from '../cautions.ts';
import { describedFile } from '../described.ts';
import { LEADING, noteLines } from '../drawing.ts';
import { settleOf } from '../knife.ts';
import { brokenLines } from '../letters.ts';
import type { CutFile, CutJob, Toolpath } from '../model.ts';
import { BEVEL_COUPON, BEVEL_STEPS, bevelCoupon, uncorrected } from './bevel.ts';
import { KNIFE_STEPS, knifeCoupon, knifeCouponSize } from './knife.ts';
import { LASER_COUPON, LASER_STEPS, laserCoupon } from './laser.ts';

const LETTERS = 3;
const EDGE = 5;

interface Coupon {
  readonly size: Size;
  readonly toolpaths: readonly Toolpath[];
  readonly steps: readonly string[];
}

/** The small piece by which a machine is measured, from the top mat's board; its words say how. */
export function couponFile(job: Job, mat: Mat, given: Machine, fonts: Fonts): Result<readonly CutFile[]> {
  // The scale that a plotter's file would be corrected by is measured, too.
  const machine: Machine = { ...given, scale: { x: 1, y: 1 } };
  const made = couponOf({ job, mat, fonts }, machine);
  if (!made.ok) return made;
  const { size, toolpaths, steps } = made.value;
  const notes = words([...steps, ...cautions(machine.kind)], size, fonts);
  const full = { width: size.width, height: size.height + notes.height };
  const problems = tooSmall(machine, machine.notes ? full : size, job);
  if (problems.length > 0) return fail(problems);
  const file = describedFile(`cut-${machine.id}-coupon`, machine, machine.notes ? full : size, toolpaths, {
    title: `Coupon for ${machine.id}`,
    about: 'coupon',
    notes: notes.items,
    boards: [],
    sight: [],
    allowances: steps,
  });
  return succeed([file], made.warnings);
}

function couponOf(cut: CutJob, machine: Machine): Result<Coupon> {
  switch (machine.kind) {
    case 'laser':
      return succeed({ size: LASER_COUPON, toolpaths: laserCoupon(), steps: LASER_STEPS });
    case 'knife': {
      const settle = settleOf(machine);
      const size = knifeCouponSize(machine, settle);
      return succeed({ size, toolpaths: knifeCoupon(machine, settle), steps: KNIFE_STEPS });
    }
    case 'bevel': {
      const board = bevelCoupon(cut.mat.layers[0]!.board);
      const made = bevel.toolpaths(board, cut, uncorrected(machine));
      return made.ok ? succeed({ size: BEVEL_COUPON, toolpaths: made.value, steps: BEVEL_STEPS }) : made;
    }
    default: {
      const never: never = machine;
      return never;
    }
  }
}

/** Below the pieces, on the layer that is not cut. */
function words(
  lines: readonly string[],
  size: Size,
  fonts: Fonts,
): { readonly items: readonly Item[]; readonly height: number } {
  const broken = lines.flatMap((line) => brokenLines(line, LETTERS, size.width - 2 * EDGE, fonts));
  const items = noteLines(broken, LETTERS, { x: EDGE, y: size.height }, 'words', fonts);
  return { items, height: broken.length * LEADING * LETTERS + EDGE };
}

function tooSmall({ bed, id }: Machine, size: Size, job: Job): readonly Problem[] {
  if (bed === undefined || (size.width <= bed.width && size.height <= bed.height)) return [];
  const message = `the coupon takes ${showSize(size, job.units)}, the bed of ${id} is ${showSize(bed, job.units)}`;
  return [error('coupon-bed-small', [], message, 'is the bed right? notes: false makes the coupon smaller')];
}
