import * as z from 'zod/mini';
import { described, type Keywords, line, oneOf, record } from '../../read/fields/fields.ts';
import type { LengthUnit } from '../../units/units.ts';
import { BEVEL_EXAMPLE, bevelShape } from './bevel.ts';
import { BEVEL_COUPON_EXAMPLE, bevelCouponShape } from './bevel-coupon.ts';
import { GUIDE_EXAMPLE, guideShape } from './guide.ts';
import { HEAD_EXAMPLE, headShape } from './head.ts';
import { KNIFE_EXAMPLE, knifeShape } from './knife.ts';
import { LASER_EXAMPLE, laserShape } from './laser.ts';
import { PRINTER_EXAMPLE, printerShape } from './printer.ts';

/** The tools of the bench, in the order in which they are calibrated. */
export const TOOLS = ['printer', 'guide', 'head', 'bevel'] as const;
export type Tool = (typeof TOOLS)[number];
/** What is read from the coupons of machines. */
export const COUPONS = ['laser', 'knife', 'bevel-coupon'] as const;
export type CouponKind = (typeof COUPONS)[number];
/** Everything that is. */
export const CALIBRATED = [...TOOLS, ...COUPONS] as const;
export type Calibrated = (typeof CALIBRATED)[number];

const SHAPES = {
  printer: printerShape,
  guide: guideShape,
  head: headShape,
  bevel: bevelShape,
  laser: laserShape,
  knife: knifeShape,
  'bevel-coupon': bevelCouponShape,
};

/** The readings of one kind as a file of their own. */
export function readingsSchema<K extends Calibrated>(kind: K, unit: LengthUnit) {
  const shape = SHAPES[kind](unit) as ReturnType<(typeof SHAPES)[K]>;
  const units = z.optional(oneOf('The unit of bare numbers; mm without it', ['in', 'mm', 'cm']));
  const whole = { units, ...shape };
  return record(whole, `a map: ${Object.keys(shape).join(', ')}`);
}

/** What the shop's file keeps of its calibrations: the readings of each, and what came of them. */
export function calibrationsSchema(unit: LengthUnit) {
  const result = z.optional(line('What came of the readings', ['x 0.9965 ± 0.0012, y 0.9980 ± 0.0012']));
  const kept = <S extends z.core.$ZodLooseShape>(what: string, example: Keywords, shape: S) => {
    const one = record({ ...shape, result }, `a map: ${Object.keys(shape).join(', ')}, result`);
    const list = z.array(described(one, `One calibration of ${what}`), 'a list of calibrations');
    return z.optional(described(list, `Calibrations of ${what}`, [[example]]));
  };
  const sheets = { printer: 'office', date: '2026-03-01', sheets: [PRINTER_EXAMPLE] };
  const every = record(
    {
      printer: kept('printers', sheets, printerShape(unit)),
      guide: kept('the guide', { strips: [GUIDE_EXAMPLE] }, guideShape(unit)),
      head: kept('heads', { head: 'pull-45', pieces: [HEAD_EXAMPLE] }, headShape(unit)),
      bevel: kept('bevels', { head: 'pull-45', strips: [BEVEL_EXAMPLE] }, bevelShape(unit)),
      laser: kept('lasers', LASER_EXAMPLE, laserShape(unit)),
      knife: kept('drag knives', KNIFE_EXAMPLE, knifeShape(unit)),
      'bevel-coupon': kept('bevel heads of machines', BEVEL_COUPON_EXAMPLE, bevelCouponShape(unit)),
    },
    `a map: ${CALIBRATED.join(', ')}`,
  );
  return described(every, 'The readings that calibrations were made from, the latest last', [{ printer: [sheets] }]);
}
