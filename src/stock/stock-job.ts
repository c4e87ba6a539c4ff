import type { Problem } from '../problems/problem.ts';
import type { Shop } from '../shop/shop.ts';
import type { JobToCut } from './blanks.ts';

/** Adds file, line and column to problems that point into a text. */
type Locate = (problems: readonly Problem[]) => readonly Problem[];

/** A job whose blanks are planned. */
export interface StockJob extends JobToCut {
  readonly locate: Locate;
}

/** The shop that all the jobs share. */
export interface StockShop {
  readonly shop: Shop;
  readonly locate: Locate;
}
