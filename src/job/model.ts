import type { Size } from '../geometry/point.ts';
import type { Fields } from '../shapes/shape.ts';
import type { ShapeKind } from '../shapes/shapes.ts';
import type { LengthUnit } from '../units/units.ts';
import type { ArrangeRequest, DecorRequest, OpeningStep, PlaceRequest } from './arrange-model.ts';
import type { AsCutRequest } from './as-cut-model.ts';
import type { Head } from './head-model.ts';
import type { LetteringRequest } from './lettering-model.ts';
import type { Machine } from './machine-model.ts';
import type { Prices } from './prices-model.ts';

export type { Head, OffsetAt } from './head-model.ts';
export type { Prices } from './prices-model.ts';

/**
 * A checked job with everything of the shop that it names already looked up. Lengths are mm.
 * A value that the text left out and the solver derives is `undefined` here; every other default is filled in.
 */
export interface Job {
  readonly title: string;
  readonly number?: string;
  readonly customer?: string;
  readonly units: Units;
  readonly mat: MatRequest;
  readonly openings: readonly OpeningRequest[];
  /** How the openings without a place of their own lie; one alone needs none. */
  readonly arrange?: ArrangeRequest;
  /** Texts that are cut through the top mat. */
  readonly lettering?: readonly LetteringRequest[];
  readonly count: number;
  readonly bench: BenchRequest;
  readonly print: PrintRequest;
  /** What was cut already, where it did not come out as planned. */
  readonly asCut?: AsCutRequest;
}

/** The unit of the job's bare numbers, and what documents print. */
export type Units = LengthUnit;

/** Sides are named from the face view. */
export type Side = 'top' | 'right' | 'bottom' | 'left';
export const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left'];
export type BySide<T> = Readonly<Record<Side, T>>;
/** Sides that were given; the others are left to the solver. */
export type SomeSides = Readonly<Partial<Record<Side, number>>>;

export interface MatRequest {
  readonly outer?: Size;
  readonly frame?: FrameRequest;
  /** Mat edge to the face opening of the top mat. */
  readonly border: SomeSides;
  readonly weighting?: Weighting;
  /** Board between any two cuts of neighbouring openings, at least. */
  readonly leastBar?: number;
  /** Top mat first; never empty. */
  readonly layers: readonly LayerRequest[];
}

/** Exactly one of `inside` (measured in the rebate; clearance comes off) and `nominal` (clearance already in it). */
export interface FrameRequest {
  readonly inside?: Size;
  readonly nominal?: Size;
  /** Over all, not per side. */
  readonly clearance: number;
  /** How much of the mat the frame's lip covers on each side. */
  readonly lip: number;
  /** Of a frame or a moulding of the shop. */
  readonly name?: string;
  /** Of the rebate. */
  readonly depth?: number;
  readonly glazing?: PackagePart;
  readonly backing?: PackagePart;
  /** Width of the moulding's face, from the edge of its sight to its outside. */
  readonly width?: number;
  /** `#rrggbb`, of the moulding's face. */
  readonly colour?: string;
  /** Of the frame or its moulding. */
  readonly price?: Rate;
  /** Between glazing and mat, or between mat and art. */
  readonly spacer?: number;
  /** Thickness of the artwork with its support. */
  readonly art?: number;
}

/** Glazing or backing: what lies in the rebate before or behind the mat. */
export interface PackagePart {
  /** The shop's key, or what the job calls one given in place. */
  readonly id: string;
  readonly name: string;
  readonly thickness: number;
  readonly price?: Rate;
  /** Of a backing: the sizes of sheet that it is bought in. */
  readonly sheets?: readonly SheetSize[];
}

/** A price for so much of a thing. */
export interface Rate {
  readonly amount: number;
  readonly per: keyof typeof RATES;
}

/** What a price may be for, and what documents call it. */
export const RATES = {
  piece: 'piece',
  sheet: 'sheet',
  squareFoot: 'square foot',
  squareMetre: 'square metre',
  foot: 'foot',
  metre: 'metre',
  unitedInch: 'united inch',
} as const;

/** A length of moulding made up into frames of any size. */
export interface Moulding {
  readonly id: string;
  readonly name: string;
  readonly lip: number;
  readonly depth?: number;
  readonly clearance?: number;
  /** Of its face, from the edge of its sight to its outside. */
  readonly width?: number;
  readonly colour?: string;
  readonly price?: Rate;
}

/** A ready-made frame: exactly one of `inside` and `nominal`, as in a job. */
export interface ReadyFrame extends Moulding {
  readonly inside?: Size;
  readonly nominal?: Size;
}

export type Weighting =
  | { readonly kind: 'none' }
  | { readonly kind: 'add'; readonly length: number }
  | { readonly kind: 'ratio'; readonly ratio: number }
  | { readonly kind: 'diagonal' };

export interface Board {
  /** The shop's key, or what the job calls a board given in place. */
  readonly id: string;
  readonly name: string;
  readonly thickness: number;
  readonly plies?: number;
  /** `#rrggbb`. */
  readonly colour: string;
  readonly core: string;
  /** The sizes of sheet that it is bought in. */
  readonly sheets: readonly SheetSize[];
  /** Of a sheet that has none of its own. */
  readonly price?: number;
  /** By area, instead. */
  readonly areaPrice?: Rate;
  /** True where the board has a direction, so that blanks may not turn. */
  readonly directional: boolean;
}

/** A size of sheet that a board is bought in. */
export interface SheetSize extends Size {
  readonly price?: number;
  /** How many are left; undefined where as many can be had as are needed. */
  readonly count?: number;
}

export interface LayerRequest {
  readonly board: Board;
  readonly bevel: Bevel;
  /** Face edge of the layer above to the face edge of this one; undefined on the top mat, or where it is derived. */
  readonly reveal?: number;
  /** Reveals that differ by side; then `reveal` is undefined. */
  readonly reveals?: BySide<number>;
  /** Lifts this layer off the one above. */
  readonly spacer?: number;
  /** Taken off each edge of an under mat. */
  readonly trimBack: number;
}

/** Degrees between the bevel and the face of the board, 90 being square. `reverse`: the face opening is the smaller. */
export interface Bevel {
  readonly angle: number;
  readonly reverse: boolean;
}

export interface OpeningRequest {
  readonly name?: string;
  readonly shape: ShapeKind;
  /** What the shape needs beside its size. */
  readonly fields?: Fields;
  readonly place?: PlaceRequest;
  /** One for each under mat, where this opening treats them otherwise than the mat's layers say. */
  readonly steps?: readonly OpeningStep[];
  readonly decor?: readonly DecorRequest[];
  readonly artwork?: Size;
  /** Mat over artwork, per side; only with an artwork. */
  readonly overlap: SomeSides;
  /** Paper or backing shown around the artwork, per side; undefined where the artwork is overlapped. */
  readonly float?: SomeSides;
  readonly size?: Size;
  /** The file of the artwork's picture, as the job names it: relative to the job. */
  readonly picture?: string;
  /** `face`: sizes are the face opening of the lowest layer; `sight`: the innermost of all edges. */
  readonly measure: 'face' | 'sight';
}

export interface BenchRequest {
  readonly head: Head;
  readonly guide: Guide;
  /** The graduation that settings are rounded to, mm. */
  readonly graduation: number;
  readonly snap: boolean;
  readonly stack: 'together' | 'apart';
  /** The edge along which window and backing hinge together; undefined: the longer one, left or top. */
  readonly hinge?: Side;
}

export interface Guide {
  readonly graduation: number;
  readonly longest?: number;
  /** Thickness it was set at; undefined switches the thickness term off. */
  readonly setAt?: number;
  /** True setting = a + b × reading. */
  readonly a: number;
  readonly b: number;
}

export interface PrintRequest {
  /** A paper's id, `W x H`, `fit` or `roll:W`. */
  readonly paper: string;
  readonly margin: BySide<number>;
  readonly lap: number;
  readonly join: 'lap' | 'butt';
  readonly transfer: 'prick' | 'cut-through';
  /** Thickness of the pattern's paper, which counts where it is cut through. */
  readonly paperThickness: number;
  readonly printer?: Printer;
}

/** Measured length over nominal, in x and y of the page; unprintable margins. */
export interface Printer {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly margin: BySide<number>;
}

/** A checked shop; the names are those that jobs use. Lengths are mm. */
export interface Shop {
  readonly units: Units;
  readonly boards: ReadonlyMap<string, Board>;
  readonly heads: ReadonlyMap<string, Head>;
  readonly machines: ReadonlyMap<string, Machine>;
  /** Undefined where the shop says nothing of it: its default follows the job's units. */
  readonly guide?: Guide;
  readonly printers: ReadonlyMap<string, Printer>;
  readonly papers: ReadonlyMap<string, Size>;
  readonly mouldings: ReadonlyMap<string, Moulding>;
  readonly frames: ReadonlyMap<string, ReadyFrame>;
  readonly glazing: ReadonlyMap<string, PackagePart>;
  readonly backing: ReadonlyMap<string, PackagePart>;
  /** Outer sizes that the shop likes to use, as they are listed. */
  readonly sizes: readonly Size[];
  readonly prices?: Prices;
  /** Offcuts that lie on the shelf, as they are listed. */
  readonly shelf: readonly ShelfOffcut[];
  readonly stock: StockSettings;
}

/** A piece of board that is left from earlier work. */
export interface ShelfOffcut extends Size {
  /** What is written on it; unique on the shelf. */
  readonly id: string;
  /** A board or a backing of the shop. */
  readonly board: string;
  readonly note?: string;
}

/** How sheets of board are broken down. */
export interface StockSettings {
  /** Comes off each edge of a sheet before anything else. */
  readonly trim: BySide<number>;
  /** Width of a cut: 0 for a knife. */
  readonly kerf: number;
  /** What is smaller than this, either way round, is not worth keeping. */
  readonly leastOffcut: Size;
  /** The longest cut that the trimming head makes; undefined where it reaches across every sheet. */
  readonly longestCut?: number;
  /** True where every blank must have an edge of its sheet, untrimmed. */
  readonly factoryEdge: boolean;
  /** Off each side of what drops out of an opening, before it is stock. */
  readonly falloutMargin: number;
  /** The board that each piece gets another blank of, behind the artwork. */
  readonly backing?: string;
}
