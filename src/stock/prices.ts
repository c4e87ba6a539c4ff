import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import { frameOf, pieceBox } from '../mat/framed.ts';
import type { Mat } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import { sentenceCase } from '../problems/sentence-case.ts';
import type { Board } from '../shop/board.ts';
import type { Prices } from '../shop/prices.ts';
import type { Rate } from '../shop/rate.ts';
import { inchesFromMm, mmFromInches } from '../units/units.ts';
import { byArea } from './sheet-price.ts';

export interface PriceLine {
  readonly what: string;
  /** In the shop's money, rounded to its digits. */
  readonly amount: number;
}

/** What one piece costs. The lines as printed add up to the total as printed. */
export interface PriceList {
  readonly lines: readonly PriceLine[];
  readonly tax?: PriceLine & { readonly included: boolean };
  readonly total: number;
  /** What the piece has but the shop gives no price for. */
  readonly without: readonly string[];
  readonly currency?: string;
  readonly decimals: number;
  /** How many alike, and what they cost together; only where there are several. */
  readonly all?: { readonly count: number; readonly total: number };
}

/** Undefined where the shop has no `prices`: what it pays for its sheets is then nobody's business. */
export function priceList(mat: Mat, job: Job, prices: Prices | undefined): PriceList | undefined {
  if (prices === undefined) return undefined;
  const { decimals } = prices;
  const lines: PriceLine[] = [];
  const without: string[] = [];
  const add = (what: string, amount: number | undefined, needed = true): void => {
    if (amount !== undefined) lines.push({ what, amount: rounded(amount, decimals) });
    else if (needed) without.push(what);
  };
  for (const { name, board, blank } of mat.layers) {
    add(
      `${sentenceCase(name)}, ${board.name}`,
      boardPrice(board, blank, job.count, prices),
      prices.unitedInch === undefined,
    );
  }
  add(
    'Mat by the united inch',
    prices.unitedInch === undefined ? undefined : prices.unitedInch * mat.unitedInches,
    false,
  );
  const { frame } = job.mat;
  if (frame !== undefined) {
    const whole = pieceBox(mat, job);
    const known = frameOf(job)?.known === true;
    const size = known ? whole : mat.outer;
    add(frame.name ?? 'Frame', frame.price === undefined ? undefined : byRate(frame.price, size));
    add(frame.glazing?.name ?? 'Glazing', byMaybe(frame.glazing?.price, mat.glazing), frame.glazing !== undefined);
    add(frame.backing?.name ?? 'Backing', byMaybe(frame.backing?.price, mat.backing), frame.backing !== undefined);
  }
  add('Labour', prices.labour, false);
  const net = lines.reduce((sum, line) => sum + line.amount, 0);
  const { tax } = prices;
  const share = (tax?.percent ?? 0) / 100;
  const taxed = rounded(tax?.included === true ? (net * share) / (1 + share) : net * share, decimals);
  const total = rounded(tax?.included === true ? net : net + taxed, decimals);
  return {
    lines,
    without,
    total,
    decimals,
    ...defined({ currency: prices.currency }),
    ...(tax === undefined
      ? {}
      : { tax: { what: `${tax.name} ${tax.percent} %`, amount: taxed, included: tax.included } }),
    ...(job.count > 1 ? { all: { count: job.count, total: rounded(total * job.count, decimals) } } : {}),
  };
}

/** Halves go up, also where binary fractions lie a hair below them. */
function rounded(amount: number, decimals: number): number {
  const unit = 10 ** decimals;
  return Math.round(amount * unit * (1 + 1e-12)) / unit;
}

const area = ({ width, height }: Size): number => width * height;

function boardPrice(board: Board, blank: Size, count: number, prices: Prices): number | undefined {
  if (board.areaPrice !== undefined) return byRate(board.areaPrice, blank);
  const sheet = board.sheets.find((size) => fitting(size, blank, board.directional) > 0);
  const price = sheet?.price ?? board.price;
  if (price === undefined || sheet === undefined) return undefined;
  if (prices.boards === 'share') return (price * area(blank)) / area(sheet);
  return (price * Math.ceil(count / fitting(sheet, blank, board.directional))) / count;
}

/** How many blanks lie in a sheet in plain rows. */
function fitting(sheet: Size, blank: Size, directional: boolean): number {
  const rows = (w: number, h: number): number =>
    Math.floor(sheet.width / w + 1e-9) * Math.floor(sheet.height / h + 1e-9);
  const upright = rows(blank.width, blank.height);
  return directional ? upright : Math.max(upright, rows(blank.height, blank.width));
}

const byMaybe = (rate: Rate | undefined, size: Size): number | undefined =>
  rate === undefined ? undefined : byRate(rate, size);

const FOOT = mmFromInches(12);

/** Moulding is sold by the outside of the frame, since its mitres are cut off what is bought (common practice). */
function byRate({ amount, per }: Rate, size: Size): number {
  const around = 2 * (size.width + size.height);
  switch (per) {
    case 'piece':
    case 'sheet':
      return amount;
    case 'squareFoot':
    case 'squareMetre':
      return byArea(amount, per, size);
    case 'foot':
      return (amount * around) / FOOT;
    case 'metre':
      return (amount * around) / 1000;
    case 'unitedInch':
      return amount * inchesFromMm(size.width + size.height);
    default: {
      const never: never = per;
      throw new TypeError(`unknown rate ${String(never)}`);
    }
  }
}

/** `€ 12.50`. */
export function money(amount: number, { currency, decimals }: Pick<PriceList, 'currency' | 'decimals'>): string {
  const text = amount.toFixed(decimals);
  return currency === undefined ? text : `${currency}\u00a0${text}`;
}
