import { error, type Problem } from '../problems/problem.ts';

export const CANCELLED: Problem = error('cancelled', [], 'the work was stopped', 'ask again');
