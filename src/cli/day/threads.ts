import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Piscina } from 'piscina';
import { ALONE, type Crew } from './crew.ts';

/** Fewer jobs are done before threads have started. */
const FEWEST_JOBS = 4;
/** Of one thread: a job that wants more ends its thread, and nothing else. */
const MOST_MEMORY_MB = 1024;
const IDLE_MS = 10_000;

/** As the build calls it. From the sources there is none, and one thread does all. */
const WORKER = 'day-worker.js';

/** Threads for so many jobs: as many as were asked for, else as there are processors. */
export function crewFor(jobs: number, asked: number | undefined): Crew {
  const file = join(dirname(fileURLToPath(import.meta.url)), WORKER);
  const hands = Math.min(asked ?? availableParallelism(), Math.max(1, Math.floor(jobs / 2)));
  const few = asked === undefined && jobs < FEWEST_JOBS;
  return hands < 2 || few || !existsSync(file) ? ALONE : threads(file, hands);
}

/** A pool that starts its threads when there is something to do. */
export function threads(file: string, hands: number, memory = MOST_MEMORY_MB): Crew {
  let pool: Piscina | undefined;
  let starting: Promise<Piscina> | undefined;
  const start = async (): Promise<Piscina> => {
    const { Piscina: Pool } = await import('piscina');
    pool = new Pool({
      filename: file,
      minThreads: hands,
      maxThreads: hands,
      idleTimeout: IDLE_MS,
      resourceLimits: { maxOldGenerationSizeMb: memory },
    });
    // The task of a thread that came to an end says so itself.
    pool.on('error', () => undefined);
    return pool;
  };
  return {
    hands,
    async run(kind, task) {
      starting ??= start();
      return (await starting).run({ kind, task });
    },
    async close() {
      const own = pool;
      pool = undefined;
      await own?.destroy();
    },
  };
}
