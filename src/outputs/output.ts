import type { Document } from '../drawing/document.ts';
import type { Drawing } from '../drawing/model.ts';
import type { Pictures } from '../pictures/model.ts';
import type { Result } from '../problems/problem.ts';
import type { PaperUse } from '../settle/settle.ts';
import type { Settled } from '../settle/settled.ts';
import type { Shop } from '../shop/shop.ts';
import type { WriteOptions } from '../writers/formats.ts';
import type { OptionName } from './option-table.ts';
import type { OutputOptions, Surroundings } from './options.ts';
import type { OutputId, Records } from './records.ts';
import type { Solved, Source } from './solve-job.ts';
import type { Taken } from './taken.ts';

/** What outputs are made of. */
export interface Work {
  /** Read and solved, once for whatever is made of them. */
  readonly jobs: readonly Solved[];
  /** The shop's file: where there is no job, for the places of problems, and to write into. */
  readonly shop?: Source;
}

/** What was decided for some work before anything is drawn. */
export interface Ready {
  readonly work: Work;
  readonly shop: Shop;
  readonly settled: Settled;
}

/** How the pages of a document that are files by themselves are called: `proof.svg`, `stock-2.svg`, `pattern-1-B2.svg`. */
export type PageNames = 'numbered where there are several' | 'numbered' | 'by name';

/** A document of an output, finished but not written. */
export interface DrawnDocument {
  /** Of its files, without an ending. */
  readonly name: string;
  readonly document: Document;
  readonly pages: PageNames;
  /** Which of the pages show a part of the drawing, from 0, where that is one drawing over several pages. */
  readonly tiles?: readonly number[];
  /** The one drawing that is laid on the pages, which is the document's SVG. */
  readonly whole?: Drawing;
  /** What it is, in a few words: `6 sheets of Letter`. */
  readonly said: string;
  /** More of it, in sentences. */
  readonly more: readonly string[];
}

/** A drawing that is a file by itself: one that a machine follows. */
export interface DrawnFile {
  readonly name: string;
  readonly drawing: Drawing;
  readonly how: Omit<WriteOptions, 'fonts'>;
  /** Of this one, where they are not those of all. */
  readonly formats?: readonly string[];
  readonly said: string;
  readonly more: readonly string[];
}

/** What an output is before it is written. Plain data. */
export interface Drawn<R> {
  readonly record: R;
  readonly title: string;
  readonly documents: readonly DrawnDocument[];
  readonly drawings: readonly DrawnFile[];
  /** The formats of `drawings`. */
  readonly drawingFormats: readonly string[];
  /** The formats that it is written in where nothing is asked for. */
  readonly usual: readonly string[];
  /** Room that it takes on a machine's bed. */
  readonly beds: Taken['beds'];
  readonly pictures?: Pictures;
  /** What holds for all of it, in sentences. */
  readonly notes: readonly string[];
  /** A pattern that names of its files have, also of those that an earlier run may have left. */
  readonly family?: string;
}

export type Draw<R> = (ready: Ready, options: OutputOptions, around: Surroundings) => Promise<Result<Drawn<R>>>;

/** What is loaded to draw an output. */
export interface Drawer<R> {
  readonly draw: Draw<R>;
  /** The work that it is really made of, where that is more than the work it was asked for. */
  readonly worked?: (work: Work, options: OutputOptions) => Promise<Result<Work>>;
}

/** How many jobs an output is made of. */
export type Needs = 'a job' | 'jobs' | 'a job or none';

/** A row of the table of outputs. */
export interface Output<Id extends OutputId = OutputId> {
  readonly id: Id;
  /** For lists: one line. */
  readonly summary: string;
  readonly needs: Needs;
  /** What it asks of the paper; nothing where it goes on none. */
  readonly use?: PaperUse;
  /** Whether all jobs are to be of one shop. */
  readonly oneShop?: boolean;
  readonly options: readonly OptionName[];
  /** Whether the printer may be one that the shop does not know yet. */
  readonly newPrinter?: (options: OutputOptions) => boolean;
  /** The first is the usual one. */
  readonly formats: readonly string[];
  /** What follows the list of options in its help. */
  readonly notes?: string;
  /** Ways to call it, without the program's name. */
  readonly examples: readonly string[];
  /** With what it is among everything that is made of one job: once for each. Left out where it is not. */
  readonly ofEveryJob?: (job: Solved) => readonly OutputOptions[];
  readonly load: () => Promise<Drawer<Records[Id]>>;
}
