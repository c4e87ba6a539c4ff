import { type Calibration, type CalibrationRequest, calibrate, inShop } from './bench/calibration.ts';
import { couponOutcome } from './cutfiles/coupons/outcome.ts';
import type { Result } from './problems/problem.ts';

/** What readings come to, of a tool of the bench or of a machine's coupon, and the shop's file with it written in. */
export function calibrateAny(request: CalibrationRequest): Result<Calibration> {
  const { kind } = request;
  switch (kind) {
    case 'printer':
    case 'guide':
    case 'head':
    case 'bevel':
      return calibrate({ ...request, kind });
    case 'laser':
    case 'knife':
    case 'bevel-coupon':
      return inShop(request, (context) => couponOutcome(kind, request, context));
    default: {
      const never: never = kind;
      throw new TypeError(`unknown kind ${JSON.stringify(never)}`);
    }
  }
}
