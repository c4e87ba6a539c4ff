import { type ReadReadings, readReadings } from '../job/readings.ts';
import { fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { calibrationState, notYet } from '../shop/calibrated.ts';
import { editShop } from '../shop/edit-shop.ts';
import { readShop } from '../shop/read-shop.ts';
import type { Calibrated, Tool } from '../shop/readings-schema.ts';
import type { Shop } from '../shop/shop.ts';
import { fromBevelReadings } from './bevel-readings.ts';
import { fromGuideReadings } from './guide-readings.ts';
import { fromHeadReadings } from './head-readings.ts';
import type { Context, Outcome } from './outcome.ts';
import { fromPrinterReadings } from './printer-readings.ts';

export interface CalibrationRequest<K extends Calibrated = Calibrated> {
  readonly kind: K;
  readonly text: string;
  /** As problems name it. */
  readonly file: string;
  /** The shop's file as it is now; none where there is none yet. */
  readonly shop?: { readonly text: string; readonly file: string };
  /** The day that is written where the readings name none. */
  readonly date: string;
}

export interface Calibration extends Outcome {
  /** The shop's file with the result in it. */
  readonly shopText: string;
}

/** What the readings of a tool of the bench come to. Problems as of `inShop`. */
export const calibrate = (request: CalibrationRequest<Tool>): Result<Calibration> =>
  inShop(request, (context) => outcome(request.kind, request, context));

/**
 * What readings come to, and the shop's file with it written in. Nothing is written to disk. Problems of the readings
 * carry file, line and column; a shop's file that could not be read afterwards is refused.
 */
export function inShop(
  request: CalibrationRequest,
  outcomeIn: (context: Context) => Result<Outcome>,
): Result<Calibration> {
  const { shop: source } = request;
  const shop = source === undefined ? succeed<Shop | undefined>(undefined) : readShop(source);
  if (!shop.ok) return shop;
  const context: Context = {
    shop: shop.value,
    state: calibrationState(source?.text, source?.file),
    date: request.date,
  };
  const made = outcomeIn(context);
  if (!made.ok) return made;
  const file = source?.file ?? 'shop.yaml';
  const edited = editShop(source?.text ?? NEW_SHOP, file, made.value.edits);
  if (!edited.ok) return edited;
  const again = readShop({ text: edited.value, file });
  if (!again.ok) return fail(again.problems);
  return succeed({ ...made.value, shopText: edited.value }, [...orderWarnings(request, context), ...made.warnings]);
}

/** First the printer, then the guide, then a head: each is read with the ones before. */
function orderWarnings({ kind, file }: CalibrationRequest, { state }: Context): readonly Problem[] {
  const missing = notYet(kind, state);
  if (missing.length === 0) return [];
  const message = `not yet calibrated: ${missing.join(' and ')}; what they are off counts here as if it were the ${kind}'s`;
  return [{ ...warning('calibrate-order', [], message, 'calibrate printer, guide and head in this order'), file }];
}

const NEW_SHOP = '# The shop: what it has, and what was measured of it.\n';

function outcome(kind: Tool, request: { text: string; file: string }, context: Context): Result<Outcome> {
  switch (kind) {
    case 'printer':
      return located(readReadings('printer', request), (readings) => fromPrinterReadings(readings, context));
    case 'guide':
      return located(readReadings('guide', request), (readings) => fromGuideReadings(readings, context));
    case 'head':
      return located(readReadings('head', request), (readings) => fromHeadReadings(readings, context));
    case 'bevel':
      return located(readReadings('bevel', request), (readings) => fromBevelReadings(readings, context));
    default: {
      const never: never = kind;
      throw new TypeError(`unknown kind ${JSON.stringify(never)}`);
    }
  }
}

/** Readings, and what comes of them; problems with file, line and column. */
export function located<K extends Calibrated>(
  read: Result<ReadReadings<K>>,
  solve: (readings: ReadReadings<K>['readings']) => Result<Outcome>,
): Result<Outcome> {
  if (!read.ok) return read;
  const { readings, locate } = read.value;
  const solved = solve(readings);
  return solved.ok ? succeed(solved.value, locate(solved.warnings)) : fail(locate(solved.problems));
}
