import type { TaskKind, Tasks } from './tasks.ts';
import { work } from './work.ts';

/** Those who do tasks. */
export interface Crew {
  /** So many tasks are done at once. */
  readonly hands: number;
  readonly run: <Kind extends TaskKind>(kind: Kind, task: Tasks[Kind]['task']) => Promise<Tasks[Kind]['answer']>;
  readonly close: () => Promise<void>;
}

/** This thread by itself: nothing has to be started. */
export const ALONE: Crew = { hands: 1, run: work, close: async () => undefined };

/** Does something with each of some things, so many at once, begun in their order. */
export async function eachOf<T>(
  things: readonly T[],
  hands: number,
  work: (thing: T, at: number) => Promise<void>,
): Promise<void> {
  let next = 0;
  const hand = async (): Promise<void> => {
    while (next < things.length) {
      const at = next++;
      await work(things[at]!, at);
    }
  };
  await Promise.all(Array.from({ length: Math.min(hands, things.length) }, hand));
}
