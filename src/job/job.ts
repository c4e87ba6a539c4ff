import type { Units } from '../units/units.ts';
import type { ArrangeRequest } from './arrange.ts';
import type { AsCutRequest } from './as-cut.ts';
import type { BenchRequest } from './bench.ts';
import type { LetteringRequest } from './lettering.ts';
import type { MatRequest } from './mat.ts';
import type { OpeningRequest } from './opening.ts';
import type { PrintRequest } from './print.ts';

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
