import type { CutRecord } from '../cutfiles/model.ts';
import type { BoardBlanks } from '../documents/lists/blank-list.ts';
import type { FieldGroup } from '../documents/lists/intake-fields.ts';
import type { Label } from '../documents/lists/labels.ts';
import type { PlacedArtwork } from '../documents/placement/placement.ts';
import type { StockRecord } from '../documents/stock/record.ts';
import type { Tickets } from '../documents/ticket/tickets.ts';
import type { Size } from '../geometry/point.ts';
import type { DocumentRecord } from '../paper/manifest.ts';
import type { PriceList } from '../stock/prices.ts';

/** What each output says of itself, as plain data; lengths are mm. */
export interface Records {
  /** One for each layer, and one for what is done on the face. */
  readonly pattern: readonly PatternRecord[];
  readonly proof: ProofRecord;
  readonly ticket: Tickets['records'];
  readonly intake: readonly FieldGroup[];
  readonly placement: PlacementRecord;
  readonly blanks: readonly BoardBlanks[];
  readonly labels: readonly Label[];
  readonly stock: StockRecord;
  readonly jig: JigRecord;
  /** One for each file. */
  readonly cutfile: readonly CutRecord[];
}

export type OutputId = keyof Records;

export interface PatternRecord extends DocumentRecord {
  readonly file: string;
  readonly layer: number;
  readonly name: string;
  /** How many of the pages show a part of the pattern. */
  readonly sheets: number;
  readonly skipped: number;
  readonly summary: string;
  readonly advice: readonly string[];
  /** Which printer is corrected for, or that none is. */
  readonly printer: string;
}

export interface ProofRecord {
  readonly sheets: number;
  /** Width and height of each sheet. */
  readonly paper: Size;
  /** 1 : so much. */
  readonly scale: number;
  readonly variants: readonly { readonly label?: string; readonly prices?: PriceList }[];
}

export interface PlacementRecord extends DocumentRecord {
  readonly artworks: readonly PlacedArtwork[];
  /** How it lies on paper; one sheet where it fits, else by the backing's corners. */
  readonly extent: 'whole' | 'corners';
  readonly summary: string;
  /** Which printer is corrected for, or that none is. */
  readonly printer: string;
}

export interface JigRecord {
  readonly kind: string;
  readonly title: string;
  readonly sheets: number;
  /** Which printer is corrected for, or that none is. */
  readonly printer: string;
}
