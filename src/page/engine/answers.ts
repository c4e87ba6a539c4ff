import type { Rest, Setting } from '../../bench/model.ts';
import type { Report } from '../../bench/report.ts';
import type { OrderOfWork } from '../../bench/work/model.ts';
import type { Document } from '../../drawing/document.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Point, Size } from '../../geometry/point.ts';
import type { SchemaKind } from '../../job/json-schema.ts';
import type { OutputOptions, Step } from '../../outputs/options.ts';
import type { OutputId } from '../../outputs/records.ts';
import type { Source } from '../../outputs/solve-job.ts';
import type { Taken } from '../../outputs/taken.ts';
import type { OutputFile } from '../../outputs/write.ts';
import type { Problem } from '../../problems/problem.ts';
import type { Calibrated } from '../../shop/readings/readings.ts';
import type { LengthUnit } from '../../units/units.ts';
import type { Why } from '../../why.ts';
import type { Seen } from './seen.ts';

/** What is drawn of a piece: its face with all that can be told of it, its back, or its face for a small picture. */
export type View = 'face' | 'back' | 'small';

export interface LookRequest {
  readonly text: string;
  readonly file: string;
  readonly shop?: Source;
  readonly view: View;
  /** Names of the pictures that the page has. */
  readonly pictures: readonly string[];
}

/** Without strokes, which are many and no picture of the page shows one by one. */
export type PieceReport = Omit<Report, 'strokes' | 'grooves'>;

export interface Piece {
  readonly report: PieceReport;
  readonly units: LengthUnit;
  /** Of the guide, mm: sizes are dragged in these steps. */
  readonly graduation: number;
  readonly framed: boolean;
  /** Why each size is what it is. */
  readonly why: readonly Why[];
  /** Of a piece with many openings reasons, and problems of the strokes, are asked for by themselves, behind the picture. */
  readonly later?: true;
  readonly boards: readonly { readonly id: string; readonly name: string; readonly colour: string }[];
  readonly machines: readonly string[];
  /** Of the layers, the top mat first. */
  readonly colours: readonly string[];
  readonly face?: Seen;
  readonly backs?: readonly { readonly name: string; readonly drawing: Seen }[];
}

export interface Look {
  /** Errors where there is no piece, else warnings. */
  readonly problems: readonly Problem[];
  readonly piece?: Piece;
  /** True where letters are to be cut, and the one who was asked has no outlines of any. */
  readonly needsOutlines?: true;
}

/** What comes behind the picture of a piece; errors alone where it cannot be cut. */
export interface Remaining {
  readonly problems: readonly Problem[];
  readonly why?: readonly Why[];
}

export interface JobSource extends Source {
  /** The draft that it is; undefined where it is none. */
  readonly piece?: string;
  readonly shop?: Source;
  readonly pictures: Readonly<Record<string, Uint8Array>>;
  /** What the shop's file names, its mark; undefined where the page has none of it. */
  readonly shopPictures?: Readonly<Record<string, Uint8Array>>;
}

/** Jobs, and the shop where there are none. */
export interface Work {
  readonly jobs: readonly JobSource[];
  readonly shop?: Source;
}

export interface Wanted {
  readonly id: OutputId;
  readonly options: OutputOptions;
}

/** An output laid on its pages, not written yet. */
export interface Laid {
  readonly title: string;
  readonly taken: Taken;
  readonly documents: readonly { readonly name: string; readonly said: string; readonly document: Document }[];
  /** What goes to a machine: how each file is called in words. */
  readonly drawings: readonly { readonly name: string; readonly said: string; readonly drawing: Drawing }[];
  readonly notes: readonly string[];
  readonly pictures: Readonly<Record<string, Uint8Array>>;
}

/** The order of work, with what its view needs of each lot and each cut beside it. */
export interface Steps {
  readonly order: OrderOfWork;
  /** By lot. */
  readonly boards: readonly LotBoard[];
  /** By step; undefined where it is no cut, or one that slants. */
  readonly ends: readonly (CutEnds | undefined)[];
  /** By step: where the straightedge of a head that knows no guide is laid. */
  readonly rests: readonly (Rest | undefined)[];
}

/** The board of a lot as it lies before the one who cuts, TOP up, mm. */
export interface LotBoard extends Size {
  /** Where the windows will be. */
  readonly windows: readonly Box[];
}

/** How far from the edge of the board that it begins at a cut starts and stops. */
export interface CutEnds {
  readonly start: Setting;
  readonly stop: Setting;
}

/** Sheets of board as they are cut, and by what their plan is known again. */
export interface StockSheets {
  readonly plan: string;
  readonly sheets: readonly StockSheet[];
}

/** Sheets that are cut alike; lengths are mm. */
export interface StockSheet extends Size {
  /** `Sheet 2`, `Sheets 3 to 5`. */
  readonly name: string;
  readonly board: string;
  /** How many are cut like this. */
  readonly count: number;
  readonly pieces: readonly (Box & { readonly key: string; readonly words: string })[];
  readonly offcuts: readonly (Box & { readonly words: string })[];
  /** Every setting of the stop with its cuts, in their order. */
  readonly stops: readonly {
    readonly words: string;
    readonly cuts: readonly {
      readonly cut: number;
      readonly words: string;
      readonly from: Point;
      readonly to: Point;
    }[];
  }[];
}

/** The shop's file with a plan booked in it, and what that changed in words; the file is as it was where there is nothing to book. */
export interface BookedShop {
  readonly shopText: string;
  readonly number: string;
  readonly words: readonly string[];
}

/** A job that a row of a table says. */
export interface TableRow {
  readonly file: string;
  readonly title: string;
  readonly text: string;
}

/** What readings come to. */
export interface Calibrating {
  readonly words: readonly string[];
  /** The shop's file with it; undefined where nothing is to be written. */
  readonly shopText?: string;
  /** What is written only where somebody says so. */
  readonly offer?: { readonly question: string; readonly shopText: string };
  readonly groups: readonly ReadingGroup[];
}

/** Readings of one name, mm. */
export interface ReadingGroup {
  readonly name: string;
  readonly dots: readonly { readonly value: number; readonly out: boolean }[];
  readonly mean: number;
  /** Standard deviation. */
  readonly scatter: number;
}

export type Told<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What the page asks its workers, by the name of the question. */
export interface Asks {
  readonly look: { readonly request: LookRequest; readonly answer: Look };
  readonly rest: { readonly request: LookRequest; readonly answer: Remaining | undefined };
  /** A piece of each row of a table. */
  readonly table: {
    readonly request: { readonly table: Source; readonly template: Source; readonly shop?: Source };
    readonly answer: Told<readonly TableRow[]>;
  };
  /** The shop's file once the stock plan of some pieces is cut. */
  readonly book: {
    readonly request: Work & { readonly date: string };
    readonly answer: Told<BookedShop>;
  };
  /** What may stand in a job and in a shop's file, as their JSON Schemas tell it. */
  readonly shapes: {
    readonly request: Record<never, never>;
    readonly answer: Readonly<Record<SchemaKind, Readonly<Record<string, unknown>>>>;
  };
  /** What is wrong with a shop's file. */
  readonly shop: { readonly request: Source; readonly answer: { readonly problems: readonly Problem[] } };
  /** The sheets of board of some pieces, cut by cut. */
  readonly sheets: { readonly request: Work; readonly answer: Told<StockSheets> };
  readonly calibrating: {
    readonly request: Source & { readonly kind: Calibrated; readonly shop?: Source; readonly date: string };
    readonly answer: Told<Calibrating>;
  };
  /** How some pieces are worked, one alone or several as one run. */
  readonly steps: {
    readonly request: { readonly jobs: readonly JobSource[] };
    readonly answer: Told<Steps>;
  };
  readonly lay: {
    readonly request: Work & { readonly wanted: Wanted };
    readonly answer: Told<Laid>;
  };
  /** What an output would take, without its pages. */
  readonly take: {
    readonly request: Work & { readonly wanted: Wanted };
    readonly answer: Told<Taken>;
  };
  readonly make: {
    readonly request: Work & { readonly wanted: readonly Wanted[] };
    readonly answer: Told<readonly OutputFile[]>;
  };
}

export type AskName = keyof Asks;

export interface Asked<Name extends AskName = AskName> {
  readonly number: number;
  readonly name: Name;
  readonly request: Asks[Name]['request'];
}

export type Answered =
  | { readonly number: number; readonly answer: unknown }
  | { readonly number: number; readonly step: Step }
  | { readonly number: number; readonly broken: string };
