import type { SettleOptions } from '../settle/settled.ts';
import type { OutputId } from './records.ts';

/** Everything that can be asked of an output, each under one name for all of them. What is left out is as usual. */
export interface OutputOptions extends SettleOptions {
  /** `pdf`, `svg`, `png` of documents; of patterns `tiles` too; of files for machines `svg`, `dxf` or `hpgl`. */
  readonly format?: readonly string[];
  /** Pixels to the inch of a PNG. */
  readonly dpi?: number;
  /** Of full-scale work: sheets joined into one, or laid on by the corners of the board. */
  readonly extent?: 'whole' | 'corners';
  /** Of patterns: these groups alone, flattened. */
  readonly show?: readonly string[];
  /** Of proofs: dimension lines beside the piece. */
  readonly dimensions?: boolean;
  /** Of proofs: `mat.layers[1].board=a,b,c`, one way beside the other. */
  readonly vary?: string;
  /** A machine of the shop, or a kind of machine. */
  readonly machine?: string;
  /** Of DXF. */
  readonly dialect?: string;
  /** All layers on one bed, instead of a file for each. */
  readonly together?: boolean;
  /** Boards a quarter turn clockwise from how they hang. */
  readonly turn?: boolean;
  /** The small piece that shows what the machine makes of its file, instead of the mat. */
  readonly coupon?: boolean;
  /** Of labels: how many lie on a sheet, and how far apart; lengths are mm, across and down. */
  readonly rows?: number;
  readonly columns?: number;
  readonly gap?: readonly [number, number];
  readonly margin?: readonly [number, number];
  /** Labels of the first sheet that are used already. */
  readonly skip?: number;
  /** Of tickets: the list of the run alone. */
  readonly run?: boolean;
  /** Of stock: what drops out of openings is stock too. */
  readonly fallouts?: boolean;
  /** Of stock: another blank of this board for each piece, behind the artwork. */
  readonly backing?: string;
  /** Of stock: every sheet must have a price. */
  readonly cost?: boolean;
  readonly effort?: number;
  readonly seed?: number;
  /** Which jig. */
  readonly kind?: string;
  /** Of jigs: a head of the shop; else the job's, else the only one that there is. */
  readonly head?: string;
  /** Of jigs: of the boards to test a head on, with commas: `1.4 mm, 3 mm`. */
  readonly thickness?: string;
  /** Of jigs: also what there is to cut, in these formats of one drawing. */
  readonly cut?: readonly string[];
}

/** What a caller hands over for the name of a picture: its file's bytes, or why there are none. */
export type PictureReader = (
  name: string,
) => Promise<{ readonly bytes: Uint8Array } | { readonly why: string; readonly hint: string }>;

/** A file that was just written, of so many of its output. */
export interface Step {
  readonly output: OutputId;
  readonly file: string;
  readonly done: number;
  readonly of: number;
}

/** What only the world around can give, and how it follows and stops the work. */
export interface Surroundings {
  /** Pictures as the job names them. */
  readonly pictures?: PictureReader;
  /** The same for what the shop's file names: its mark. */
  readonly shopPictures?: PictureReader;
  /** The bytes of the program that renders a PNG (`index_bg.wasm` of @resvg/resvg-wasm). */
  readonly renderer?: () => Promise<Uint8Array>;
  readonly progress?: (step: Step) => void;
  /** Looked at between one piece of work and the next; an AbortSignal is one. */
  readonly signal?: { readonly aborted: boolean };
}
