import table from '../../shared/papers.json';
import type { NamedPaper } from './model.ts';

/** Every paper that has a name, smallest trouble first: ISO A, ISO B, JIS B, then the sizes in inches. */
export const PAPERS: readonly NamedPaper[] = table.papers;
