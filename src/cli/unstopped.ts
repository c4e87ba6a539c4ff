import { setImmediate as turn } from 'node:timers/promises';
import { INTERRUPTED, interrupt } from './day/interrupt.ts';
import { remark } from './say.ts';

/** Does what nothing is to stop half way, and says afterwards that it was asked to stop. */
export async function unstopped<T>(work: () => Promise<T>): Promise<T> {
  const { stopped, release } = interrupt(() => undefined);
  try {
    const made = await work();
    // Signals are heard between one turn and the next.
    await turn();
    if (stopped()) {
      remark('stopped when all files were written');
      process.exitCode = INTERRUPTED;
    }
    return made;
  } finally {
    release();
  }
}
