import { fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import type { Written } from '../read/document.ts';
import { calibrationState, notYet } from '../shop/calibrated.ts';
import { editShop } from '../shop/edit-shop.ts';
import { readShop } from '../shop/read-shop.ts';
import type { Calibrated } from '../shop/readings/readings.ts';
import type { Shop } from '../shop/shop.ts';
import { fromBevelReadings } from './bevel.ts';
import { fromBevelCoupon } from './bevel-coupon.ts';
import { fromGuideReadings } from './guide.ts';
import { fromHeadReadings } from './head.ts';
import { fromKnifeReadings } from './knife.ts';
import { fromLaserReadings } from './laser.ts';
import type { Context, Outcome } from './outcome.ts';
import { fromPrinterReadings } from './printer.ts';
import { type Readings, readReadings } from './readings.ts';

export interface CalibrationRequest extends Written {
  readonly kind: Calibrated;
  /** The shop's file as it is now; none where there is none yet. */
  readonly shop?: Written;
  /** The day that is written where the readings name none. */
  readonly date: string;
  /** True where what is only offered is written too. */
  readonly confirmed?: boolean;
}

export interface Calibration extends Outcome {
  /** The shop's file with the result in it. */
  readonly shopText: string;
  /** False where nothing is to be written. */
  readonly changed: boolean;
}

/** What the readings of each tool come to. */
const OUTCOMES: { readonly [K in Calibrated]: (readings: Readings<K>, context: Context) => Result<Outcome> } = {
  printer: fromPrinterReadings,
  guide: fromGuideReadings,
  head: fromHeadReadings,
  bevel: fromBevelReadings,
  laser: fromLaserReadings,
  knife: fromKnifeReadings,
  'bevel-coupon': fromBevelCoupon,
};

/**
 * What readings come to, and the shop's file with it written in. Nothing is written to disk. Problems of the readings
 * carry file, line and column; a shop's file that could not be read afterwards is refused.
 */
export function calibrate(request: CalibrationRequest): Result<Calibration> {
  const { kind, shop: source, date, confirmed = false } = request;
  const shop = source === undefined ? succeed<Shop | undefined>(undefined) : readShop(source);
  if (!shop.ok) return shop;
  const context: Context = { shop: shop.value, state: calibrationState(source?.text, source?.file), date };
  const made = outcome(kind, request, context);
  if (!made.ok) return made;
  const file = source?.file ?? 'shop.yaml';
  const { edits, offer } = made.value;
  const written = confirmed ? [...edits, ...(offer?.edits ?? [])] : edits;
  const edited = editShop(source?.text ?? NEW_SHOP, file, written);
  if (!edited.ok) return edited;
  const again = readShop({ text: edited.value, file });
  if (!again.ok) return fail(again.problems);
  const changed = written.length > 0;
  return succeed({ ...made.value, shopText: edited.value, changed }, [
    ...orderWarnings(request, context),
    ...made.warnings,
  ]);
}

const NEW_SHOP = '# The shop: what it has, and what was measured of it.\n';

function outcome<K extends Calibrated>(kind: K, written: Written, context: Context): Result<Outcome> {
  const read = readReadings(kind, written);
  if (!read.ok) return read;
  const { readings, locate } = read.value;
  const solved = OUTCOMES[kind](readings, context);
  return solved.ok ? succeed(solved.value, locate(solved.warnings)) : fail(locate(solved.problems));
}

/** First the printer, then the guide, then a head: each is read with the ones before. */
function orderWarnings({ kind, file }: CalibrationRequest, { state }: Context): readonly Problem[] {
  const missing = notYet(kind, state);
  if (missing.length === 0) return [];
  const message = `not yet calibrated: ${missing.join(' and ')}; what they are off counts here as if it were the ${kind}'s`;
  return [{ ...warning('calibrate-order', [], message, 'calibrate printer, guide and head in this order'), file }];
}
