import type { Box } from '../geometry/box.ts';
import type { Path } from '../geometry/path.ts';
import type { Size } from '../geometry/point.ts';

/** A value that a shape needs beside its size, in words that a schema can be made of. Lengths are mm once they are read. */
export type Field =
  | {
      readonly kind: 'length';
      readonly about: string;
      readonly examples: readonly string[];
      readonly least: number;
      readonly most: number;
      /** Of the opening's size, where the job leaves it out; without it the field must be given. */
      readonly usual?: (size: Size) => number;
    }
  | {
      readonly kind: 'count';
      readonly about: string;
      readonly examples: readonly number[];
      readonly least: number;
      readonly most: number;
      readonly usual?: number;
    }
  | { readonly kind: 'choice'; readonly about: string; readonly words: readonly string[]; readonly usual: string }
  | {
      readonly kind: 'outline';
      readonly about: string;
      readonly examples: readonly string[];
    };

/** The values of a shape's fields by name: lengths in mm, counts, words, or an outline. */
export type FieldValue = number | string | Path;
export type Fields = Readonly<Record<string, FieldValue>>;

/** What a kind of opening must know about itself. Lengths are mm, the view is the face view. */
export interface Shape {
  /** One line for help and for the JSON Schema. */
  readonly about: string;
  /** By the words that jobs use for them. */
  readonly fields: Readonly<Record<string, Field>>;
  /** The outline that fills `frame`, clockwise as the eye sees it. */
  readonly outline: (frame: Box, fields?: Fields) => Path;
  /**
   * The true parallel of that outline, `by` outwards (inwards where negative), corners sharp; undefined where nothing is
   * left of it, or where what is left falls apart.
   */
  readonly parallel: (frame: Box, by: number, fields?: Fields) => Path | undefined;
  /** Why the fields do not go with a size, and what to do; undefined where they do. */
  readonly fault?: (size: Size, fields: Fields) => Fault | undefined;
  /** Width ÷ height, where the shape has it fixed. */
  readonly aspect?: (fields: Fields) => number;
  /** The size that the fields alone make. */
  readonly natural?: (fields: Fields) => Size | undefined;
  /**
   * True where the parallel's box is not the frame grown by the distance: a slanting side or a point moves its box by more.
   */
  readonly growsUnevenly?: boolean;
  /** Which sides may be moved by themselves, so that a reveal may differ from side to side. */
  readonly reveals: 'any side' | 'bottom' | 'alike';
  /** What a hand needs that cannot cut it with a straight head: see `figures.ts`. */
  readonly figure?: (frame: Box, by: number, fields: Fields) => readonly Figure[];
}

export interface Fault {
  /** What is wrong, after the opening's name: `has a radius of 40 mm, more than half of its 60 mm`. */
  readonly message: string;
  readonly hint: string;
  /** The field to blame. */
  readonly field?: string;
}

/** How a curve is laid out by hand. */
export type Figure =
  | {
      readonly kind: 'oval';
      readonly centre: { readonly x: number; readonly y: number };
      readonly halfWidth: number;
      readonly halfHeight: number;
    }
  | {
      readonly kind: 'arc';
      readonly centre: { readonly x: number; readonly y: number };
      readonly radius: number;
    };
