import type { OutputId, OutputOptions } from '../../src/index.ts';

/** A job whose outputs have references in `golden/NAME/`. */
export interface Case {
  readonly name: string;
  readonly job: string;
  /** As problems and titles name it. */
  readonly file: string;
  /** More jobs, by their files, where the output is made of several. */
  readonly more?: Readonly<Record<string, string>>;
  readonly shop?: string;
  /** Where its pictures lie. */
  readonly folder?: string;
  /** A machine's files instead of patterns and proof. */
  readonly machine?: string;
  /** This output instead of patterns and proof, with its options. */
  readonly output?: OutputId;
  readonly options?: OutputOptions;
  /** Of every line its own place and pen; else the sum of all that lie in one layer of a page. */
  readonly inFull?: boolean;
  /** Pages that have a reference picture, from 1, by the name of their document. */
  readonly pictures?: Readonly<Record<string, readonly number[]>>;
}
