import * as z from 'zod/mini';
import { described, oneOf } from '../read/fields/fields.ts';

/** What `make` can make of a job by itself. */
export const OF_A_JOB = ['pattern', 'proof', 'ticket', 'intake', 'placement', 'blanks', 'labels', 'cutfile'] as const;
export type OfAJob = (typeof OF_A_JOB)[number];

/** Where neither job nor shop says it: what goes to the bench, to the customer and to the shop's machines. */
export const USUALLY_MADE: readonly OfAJob[] = ['pattern', 'proof', 'ticket', 'cutfile'];

const ABOUT = 'What make makes of a job; cutfile is a file for each of the shop’s machines';

/** In a job, and for all jobs in the shop. */
export const makeSchema = () =>
  described(z.array(oneOf(ABOUT, OF_A_JOB), 'a list: pattern, proof, ticket …'), ABOUT, [
    ['pattern', 'proof', 'ticket'],
  ]);
