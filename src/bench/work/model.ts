import type { Point } from '../../geometry/point.ts';
import type { Side } from '../../geometry/sides.ts';
import type { Board } from '../../shop/board.ts';
import type { Rest, Setting } from '../model.ts';
import type { PencilMarks } from './pencil.ts';

/**
 * The order of work of one job or of a day, as plain data: what a ticket, a run list and a view at the cutter are all
 * set from. It holds
 *
 * - `lots`: what is cut in one go of planning: one layer of one job, in as many pieces as are made of it, or the grooves
 *   on its face, with head, board, depths and what must be done before it;
 * - `steps`: everything that is done, one after the other: a head taken up, the depth or the guide set, marks made, a
 *   slip sheet laid in, an under mat fixed, every single cut of every piece, corners freed, fallouts lifted, mats joined.
 *
 * Lengths are mm. Sides are named as they lie before the one who cuts, TOP up; places are from the top left of the board as
 * it lies there.
 */
export interface OrderOfWork {
  readonly lots: readonly Lot[];
  readonly steps: readonly WorkStep[];
  /** How often the guide is set, or taken off, the first time counted. */
  readonly settings: number;
}

export interface Lot {
  /** Index of its job in the list that was given. */
  readonly job: number;
  /** As the shop counts its jobs. */
  readonly number?: string;
  readonly title: string;
  /** From 1, the top mat being 1. */
  readonly layer: number;
  /** `top mat`, `under mat 1` … */
  readonly name: string;
  readonly work: 'opening' | 'groove';
  /** What lies up while it is cut. */
  readonly up: 'back' | 'face';
  /** Pieces that are made alike. */
  readonly count: number;
  readonly head: LotHead;
  readonly board: Pick<Board, 'id' | 'name' | 'code' | 'thickness' | 'colour'>;
  /** What the blade is set to, pass after pass: one, or two for a thick board. */
  readonly depths: readonly number[];
  /** Lots that must be finished before it is begun. */
  readonly after: readonly number[];
}

export interface LotHead {
  readonly id: string;
  /** Of the bevel, degrees from the face. */
  readonly angle: number;
  /** True where it runs along a straightedge and knows no guide. */
  readonly handHeld: boolean;
}

export type WorkStep = ToolStep | LotStep | CutStep;

/** What is set before anything is laid on. */
export type ToolStep =
  | { readonly kind: 'head'; readonly head: LotHead }
  | { readonly kind: 'depth'; readonly depth: number; readonly pass: number; readonly passes: number }
  | { readonly kind: 'guide'; readonly setting: Setting }
  /** The strokes that follow are laid by a rule: each cut says how. */
  | { readonly kind: 'guide-off' };

/** What is done to all pieces of a lot, between cuts. */
export type LotStep = {
  readonly lot: number;
} /** The back is marked out: by the pattern, or where `pencil` is given, by rule and pencil. */ & (
  | { readonly kind: 'marks'; readonly pencil?: PencilMarks }
  /** What lies in the opening above while an under mat is cut: the fallout, or waste board where it would not drop out. */
  | { readonly kind: 'slip'; readonly of: 'fallout' | 'waste'; readonly thickness: number }
  /** An under mat fixed to the back of the mat above, so much short of every edge. */
  | { readonly kind: 'fix'; readonly short: number; readonly tapedFallout: boolean }
  | { readonly kind: 'curves'; readonly openings: readonly number[] }
  | { readonly kind: 'lettering' }
  | { readonly kind: 'ink'; readonly openings: readonly number[] }
  /** The corners of a reverse bevel are freed from the back, up to so far. */
  | { readonly kind: 'corners'; readonly most: number }
  /** Fallouts come out of these layers. */
  | { readonly kind: 'lift'; readonly layers: readonly number[] }
  /** Layers that were cut apart are put together. */
  | { readonly kind: 'join'; readonly layers: readonly number[] }
);

/** One pull of the head. */
export interface CutStep {
  readonly kind: 'cut';
  readonly lot: number;
  /** Which piece of how many, from 1. */
  readonly piece: number;
  readonly of: number;
  /** Its number on ticket and pattern. */
  readonly stroke: number;
  /** From 1. */
  readonly opening: number;
  /** As it lies before the one who cuts. */
  readonly side: Side;
  readonly part?: number;
  /** Which of the lot's depths, from 1. */
  readonly pass: number;
  readonly depth: number;
  /** True where the piece is laid on, TOP up, before it is turned. */
  readonly laidOn: boolean;
  /** Quarter turns of the board before this cut, clockwise to the eye; negative the other way round. */
  readonly turn: number;
  /** What the guide stands at; undefined where it is off. */
  readonly setting?: Setting;
  /** The edge on the guide, or that a rule measures from, as it lies while TOP is up; undefined for a side that slants. */
  readonly edge?: Side;
  /** That edge is the one beyond the opening: a reverse bevel. */
  readonly far: boolean;
  /** How it is laid by a rule where the guide is off. */
  readonly rest?: Rest;
  /** The line that is followed. */
  readonly line: { readonly from: Point; readonly to: Point };
  /** Where the scribe starts and stops. */
  readonly start: Point;
  readonly stop: Point;
  /** The setting as it was planned, where something was cut otherwise and this one is another now. */
  readonly planned?: Setting;
  /** True where the job says that it is cut already. */
  readonly cut?: true;
}
