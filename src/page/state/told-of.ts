import type { Problem } from '../../problems/problem.ts';
import { open } from './piece.ts';
import { told } from './sentence.ts';

/** Whether a problem speaks of the text that is open, not of the shop's file or of another piece of a run. */
export const isHere = ({ file }: Problem): boolean => file === undefined || file === open.value?.file;

/** What a problem says, with the file and the line where that is another text than the one that is open. */
export const toldOf = (problem: Problem): string =>
  isHere(problem)
    ? told(problem)
    : `${problem.file}${problem.line === undefined ? '' : `, line ${problem.line}`}: ${told(problem)}`;
