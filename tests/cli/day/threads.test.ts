import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ALONE, type Crew } from '../../../src/cli/day/crew.ts';
import { crewFor, threads } from '../../../src/cli/day/threads.ts';

/** Stands for the tasks: comes to an end as some would, or answers. */
const WORKER = `module.exports = async ({ task: { name } }) => {
  if (name === 'ends') process.exit(3);
  if (name === 'throws') throw new Error('a mistake of the program');
  if (name === 'grows') { const held = []; for (;;) held.push(new Array(1e6).fill({})); }
  return { value: [{ name, bytes: new Uint8Array([1, 2]), pages: 1 }], problems: [] };
};`;

async function within(work: (crew: Crew) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  const file = join(folder, 'worker.cjs');
  writeFileSync(file, WORKER);
  const crew = threads(file, 2, 64);
  try {
    await work(crew);
  } finally {
    await crew.close();
    rmSync(folder, { recursive: true });
  }
}
const ask = (crew: Crew, name: string) => crew.run('patterns', { name, packed: [] });

describe('threads', () => {
  it.each(['ends', 'throws', 'grows'])('go on where one %s', (how) =>
    within(async (crew) => {
      const asked = ['a', how, 'b', 'c'].map((name) =>
        ask(crew, name).then(
          (told) => told.value![0]!.name,
          () => 'failed',
        ),
      );
      expect(await Promise.all(asked)).toEqual(['a', 'failed', 'b', 'c']);
      expect((await ask(crew, 'd')).value).toEqual([{ name: 'd', bytes: new Uint8Array([1, 2]), pages: 1 }]);
    }),
  );

  it('let who waits hear of an end', () =>
    within(async (crew) => {
      await ask(crew, 'a');
      const waiting = ask(crew, 'grows').then(
        () => 'answered',
        () => 'failed',
      );
      await crew.close();
      expect(await waiting).toBe('failed');
    }));

  it('are not started for a few jobs, nor where nothing was built', () => {
    expect([crewFor(1, undefined), crewFor(3, undefined), crewFor(40, 1), crewFor(40, 2)]).toEqual([
      ALONE,
      ALONE,
      ALONE,
      ALONE,
    ]);
  });
});
