import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import { frameOf, pieceBox } from '../mat/framed.ts';
import type { Mat } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import { type Problem, warning } from '../problems/problem.ts';
import { sentenceCase } from '../problems/sentence-case.ts';
import type { Board } from '../shop/board.ts';
import { PRICES, type Prices } from '../shop/prices.ts';
import type { Rate } from '../shop/rate.ts';
import type { Shop } from '../shop/shop.ts';
import { inchesFromMm, mmFromInches } from '../units/units.ts';
import { sheetsAlone } from './quote.ts';
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
  /** Undefined where a board has no price: what the mat costs is then not known. */
  readonly total?: number;
  /** What the piece has but the shop gives no price for. */
  readonly without: readonly string[];
  readonly currency?: string;
  readonly decimals: number;
  /** A customer reads the total alone. */
  readonly totalAlone?: true;
  /** The total is what was agreed on for all of the job, tax in it. */
  readonly agreed?: true;
  /** What was paid beforehand. */
  readonly deposit?: number;
  /** What is left to be paid for all of the job; undefined where its price is not known. */
  readonly balance?: number;
  /** How many alike, and what they cost together; only where there are several. */
  readonly all?: { readonly count: number; readonly total: number };
}

/**
 * What the customer agreed on where the job says it, else what the shop's prices come to; what was paid of it. Undefined where
 * neither says anything: what the shop pays for its sheets is then nobody's business.
 */
export function priceList(mat: Mat, job: Job, shop: Pick<Shop, 'prices' | 'stock'>): PriceList | undefined {
  const { price } = job;
  const list = price?.agreed === undefined ? addedUp(mat, job, shop) : agreedOn(price.agreed, shop.prices);
  if (price?.deposit === undefined) return list;
  const known = list ?? { lines: [], without: [], ...moneyOf(shop.prices) };
  const whole = known.all?.total ?? known.total;
  const deposit = rounded(price.deposit, known.decimals);
  return {
    ...known,
    deposit,
    ...defined({ balance: whole === undefined ? undefined : rounded(whole - deposit, known.decimals) }),
  };
}

/** A deposit that is more than the price, `deposit-large`. */
export const priceWarnings = (list: PriceList | undefined): readonly Problem[] =>
  list?.balance === undefined || list.balance >= 0
    ? []
    : [
        warning(
          'deposit-large',
          ['price', 'deposit'],
          `the deposit of ${money(list.deposit!, list)} is more than the price, ${money(list.deposit! + list.balance, list)}`,
          'look at both once more',
        ),
      ];

const moneyOf = (prices: Prices | undefined): Pick<PriceList, 'currency' | 'decimals'> => ({
  decimals: prices?.decimals ?? PRICES.decimals,
  ...defined({ currency: prices?.currency }),
});

const agreedOn = (agreed: number, prices: Prices | undefined): PriceList => {
  const own = moneyOf(prices);
  return { lines: [], without: [], total: rounded(agreed, own.decimals), agreed: true, ...own };
};

function addedUp(mat: Mat, job: Job, { prices, stock }: Pick<Shop, 'prices' | 'stock'>): PriceList | undefined {
  if (prices === undefined) return undefined;
  const { decimals } = prices;
  const lines: PriceLine[] = [];
  const without: string[] = [];
  const add = (what: string, amount: number | undefined, needed = true): void => {
    if (amount !== undefined) lines.push({ what, amount: rounded(amount, decimals) });
    else if (needed) without.push(what);
  };
  const whole = prices.boards === 'sheet' ? sheetsAlone(mat, job, stock) : [];
  let boardsKnown = true;
  mat.layers.forEach(({ name, board, blank }, layer) => {
    const amount = prices.boards === 'sheet' ? whole[layer] : shareOf(board, blank);
    boardsKnown &&= amount !== undefined || prices.unitedInch !== undefined;
    add(`${sentenceCase(name)}, ${board.name}`, amount, prices.unitedInch === undefined);
  });
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
    add(frame.name ?? 'Frame', frame.price === undefined ? undefined : mouldingPrice(frame.price, size, frame.waste));
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
    ...defined({
      total: boardsKnown ? total : undefined,
      totalAlone: prices.show === 'total' ? (true as const) : undefined,
    }),
    ...moneyOf(prices),
    ...(tax === undefined || !boardsKnown
      ? {}
      : { tax: { what: `${tax.name} ${tax.percent} %`, amount: taxed, included: tax.included } }),
    ...defined({
      all: job.count > 1 && boardsKnown ? { count: job.count, total: rounded(total * job.count, decimals) } : undefined,
    }),
  };
}

/** Halves go up, also where binary fractions lie a hair below them. */
function rounded(amount: number, decimals: number): number {
  const unit = 10 ** decimals;
  return Math.round(amount * unit * (1 + 1e-12)) / unit;
}

const area = ({ width, height }: Size): number => width * height;

/** A blank's part of the first sheet that holds it, by area, or its price by area. */
function shareOf(board: Board, blank: Size): number | undefined {
  if (board.areaPrice !== undefined) return byRate(board.areaPrice, blank);
  const sheet = board.sheets.find((size) => holds(size, blank, board.directional));
  const price = sheet?.price ?? board.price;
  return price === undefined || sheet === undefined ? undefined : (price * area(blank)) / area(sheet);
}

/** Sizes that were converted from other units may be a hair off. */
const NOISE = 1e-6;

function holds(sheet: Size, { width, height }: Size, directional: boolean): boolean {
  const fits = (w: number, h: number): boolean => w <= sheet.width + NOISE && h <= sheet.height + NOISE;
  return fits(width, height) || (!directional && fits(height, width));
}

const byMaybe = (rate: Rate | undefined, size: Size): number | undefined =>
  rate === undefined ? undefined : byRate(rate, size);

const FOOT = mmFromInches(12);

/** By length more of it is bought than the frame takes. */
function mouldingPrice(rate: Rate, size: Size, waste = 0): number {
  const isByLength = rate.per === 'foot' || rate.per === 'metre';
  return byRate(rate, size) * (isByLength ? 1 + waste / 100 : 1);
}

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
