import { error, type Problem } from '../../problems/problem.ts';

/** What is said where the page itself fails, so that the piece is not lost with it. */
export const mistake = (reason: unknown): Problem =>
  error(
    'page-broken',
    [],
    `the program made a mistake: ${reason instanceof Error ? reason.message : String(reason)}`,
    'save the piece to a file, then load this page again',
  );
