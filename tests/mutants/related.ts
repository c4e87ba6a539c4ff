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

export interface Batch {
  readonly verdict: Exclude<Verdict, 'nothing'>;
  readonly files: readonly string[];
  readonly seconds: number;
}

/** Starting the tests takes about as long as this. */
const START_SECONDS = 2;

/**
 * The tests that come by a mutant, in batches: the folder's own, others, the golden references at last; within each
 * first what is quick and comes by few others, so that most mutants cost a second or two. Each batch takes three times as
 * long as the one before; others are left out beyond `budget` seconds in all.
 */
export function batchesFor(mutant: number, folder: string, all: readonly TestFile[], budget: number): readonly Batch[] {
  const reaching = all.filter(({ reaches }) => reaches.has(mutant));
  const most = Math.max(1, ...all.map(({ reaches }) => reaches.size));
  const cost = ({ seconds, reaches }: TestFile): number => (seconds + 0.2) * (reaches.size / most + 0.1);
  const kindOf = ({ file }: TestFile): Batch['verdict'] =>
    file.startsWith(`tests/${folder}/`) ? 'own' : file.startsWith('tests/golden/') ? 'golden' : 'other';
  return (['own', 'other', 'golden'] as const).flatMap((verdict) => {
    const files = reaching.filter((file) => kindOf(file) === verdict).sort((a, b) => cost(a) - cost(b));
    const batches: { verdict: Batch['verdict']; files: string[]; seconds: number }[] = [];
    let [limit, spent] = [START_SECONDS, 0];
    for (const { file, seconds } of files) {
      if (verdict === 'other' && spent > 0 && spent + seconds > budget) continue;
      spent += seconds;
      const last = batches.at(-1);
      if (last !== undefined && last.seconds + seconds <= limit) {
        last.files.push(file);
        last.seconds += seconds;
      } else {
        if (last !== undefined) limit *= 3;
        batches.push({ verdict, files: [file], seconds });
      }
    }
    return batches;
  });
}
