import type { TestFile } from './reach.ts';

/** The folders where a wrong number spoils a board. */
export const FOLDERS: readonly string[] = [
  'units',
  'geometry',
  'shapes',
  'mat',
  'bench',
  'paper',
  'cutfiles',
  'writers',
  'stock',
];

/** Whose tests noticed: the folder's own, those of what stands on it, the golden references alone, or none. */
export type Verdict = 'own' | 'other' | 'golden' | 'nothing';

export function verdictOf(file: string, folder: string): Exclude<Verdict, 'nothing'> {
  if (file.startsWith(`tests/${folder}/`)) return 'own';
  return file.startsWith('tests/golden/') ? 'golden' : 'other';
}

const KINDS = ['own', 'other', 'golden'] as const;

const OWN = 3;

/**
 * The tests that come by a mutant: the folder's own, others, the golden references at last; within each first what is quick
 * and comes by few others, so that most mutants cost a second or two. Of the others no more than `budget` seconds in all, of its own some times that.
 */
export function inOrder(mutant: number, folder: string, all: readonly TestFile[], budget: number): readonly TestFile[] {
  const most = Math.max(1, ...all.map(({ reaches }) => reaches.size));
  const cost = ({ seconds, reaches }: TestFile): number => (seconds + 0.2) * (reaches.size / most + 0.1);
  const reaching = all.filter(({ reaches }) => reaches.has(mutant)).sort((a, b) => cost(a) - cost(b));
  return KINDS.flatMap((kind) => {
    let spent = 0;
    return reaching.filter(({ file, seconds }) => {
      if (verdictOf(file, folder) !== kind) return false;
      if (spent > 0 && spent + seconds > (kind === 'own' ? OWN * budget : budget)) return false;
      spent += seconds;
      return true;
    });
  });
}
