import { spawn } from 'node:child_process';
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { DISK } from '../../../src/cli/files/disk.ts';
import { locked } from '../../../src/cli/files/lock.ts';
import { hiddenName, newRun } from '../../../src/cli/files/names.ts';
import { HERE, type Place } from '../../../src/cli/files/place.ts';
import { alive, OWN, type ProcessId } from '../../../src/cli/files/process.ts';
import { UsageError } from '../../../src/cli/usage.ts';
import { faulty, Killed, killedAt, placeOf } from './faulty.ts';
import { contents, inFolder } from './shelf.ts';

const TWO = { 'a/x': '', 'b/x': '' };

describe('a lock', () => {
  it('lets every run get on, in whatever order they name the folders', () =>
    inFolder(TWO, async (top) => {
      const [a, b] = [join(top, 'a'), join(top, 'b')];
      const place: Place = { ...HERE, alive: () => true, wait: () => pause(1) };
      const blocker = hiddenName('0-0-bench-1', 'lock');
      writeFileSync(join(b, blocker), '');
      const orders = [[a], [a, b], [b, a], [b]];
      let done = 0;
      const all = Array.from({ length: 12 }, (_, id) =>
        locked(orders[id % 4]!, newRun({ ...OWN, start: id }), place, () => {
          done += 1;
        }),
      );
      await pause(20);
      const before = done;
      rmSync(join(b, blocker));
      await Promise.all(all);
      expect([before <= 6, done, contents(top)]).toEqual([true, 12, TWO]);
    }));

  it('is never held by two, at whatever step of one the other comes', async () => {
    let [held, withdrew] = [0, 0];
    for (let step = 0; step < 12; step += 1) {
      await inFolder({ 'a/x': '' }, async (top) => {
        const a = join(top, 'a');
        const theirs = hiddenName('2-1-bench-1', 'lock');
        // The other does what every run does, and stays in for a while if it gets in.
        let [theirTurn, both] = [0, false];
        const come = (): void => {
          writeFileSync(join(a, theirs), '');
          const alone = Object.keys(contents(a)).every((name) => name === 'x' || name === theirs);
          if (alone) theirTurn = 3;
          else rmSync(join(a, theirs));
          held += alone ? 1 : 0;
          withdrew += alone ? 0 : 1;
        };
        const { disk } = faulty((done) => done === step && come());
        const place: Place = {
          ...placeOf(1, disk),
          wait: () => {
            theirTurn -= 1;
            if (theirTurn === 0) rmSync(join(a, theirs));
            return Promise.resolve();
          },
        };
        await locked([a], newRun(place.own), place, () => {
          both = theirTurn > 0;
          for (let i = 0; i < 3; i += 1) disk.find(join(a, 'x'));
          both ||= theirTurn > 0;
        });
        expect(both, `step ${step}`).toBe(false);
      });
    }
    expect([held > 1, withdrew > 2]).toEqual([true, true]);
  });

  it('is given way to by the one that comes later by name, where both stand and look', () =>
    inFolder({ 'a/x': '' }, async (top) => {
      const a = join(top, 'a');
      const theirs = hiddenName('1-1-bench-1', 'lock');
      const order: string[] = [];
      // The other stands when this one has just seen nobody, and stays until this one is out of the way.
      const { disk } = faulty((done) => done === 1 && writeFileSync(join(a, theirs), ''));
      const place: Place = {
        ...placeOf(2, disk),
        wait: () => {
          if (Object.keys(contents(a)).join() === [theirs, 'x'].join()) {
            order.push('theirs');
            rmSync(join(a, theirs));
          }
          return Promise.resolve();
        },
      };
      await locked([a], newRun(place.own), place, () => order.push('ours'));
      expect(order).toEqual(['theirs', 'ours']);
    }));

  it('of a process that has ended counts for nothing', () =>
    inFolder(TWO, async (top) => {
      const a = join(top, 'a');
      // It stood there when it was killed.
      await locked([a], newRun(placeOf(1, DISK).own), placeOf(1, killedAt(3).disk), () => 'never').catch(
        (problem: unknown) => expect(problem).toBeInstanceOf(Killed),
      );
      expect(Object.keys(contents(a))).toEqual([expect.stringMatching(/^\.matwright-1-1-bench-\d+\.lock$/u), 'x']);
      expect(await locked([a], newRun(placeOf(2, DISK).own), placeOf(2, DISK, 1), () => 'done')).toBe('done');
    }));

  it('that nobody gives back is told with its name, and the waiting one leaves nothing', () =>
    inFolder(TWO, async (top) => {
      const a = join(top, 'a');
      const theirs = hiddenName('7-7-elsewhere-1', 'lock');
      writeFileSync(join(a, theirs), '');
      const problem = await locked(
        [a],
        newRun(OWN),
        { ...placeOf(2, DISK), wait: () => Promise.resolve() },
        () => 1,
      ).catch((thrown: unknown) => thrown);
      expect(problem).toBeInstanceOf(UsageError);
      expect(String(problem)).toMatch(
        /process 7 on elsewhere has been writing there for too long; .*delete \.matwright-7-7-elsewhere-1\.lock there/u,
      );
      expect(Object.keys(contents(a))).toEqual([theirs, 'x']);
    }));
});

describe('a process', () => {
  const minutes = (count: number): number => count * 60_000;

  it('runs as long as it does, and not when its number is given out again', async () => {
    expect(alive(OWN, minutes(60))).toBe(existsSync('/proc/self/stat'));
    expect(alive(OWN, 0)).toBe(true);
    if (OWN.start !== 0) expect(alive({ ...OWN, start: OWN.start + 1 }, 0)).toBe(false);
    const child = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)'], { detached: true, stdio: 'ignore' });
    const id: ProcessId = { ...OWN, pid: child.pid!, start: 0 };
    expect(alive(id, 0)).toBe(true);
    const closed = new Promise((resolve) => child.on('close', resolve));
    process.kill(-child.pid!, 'SIGKILL');
    await closed;
    expect(alive(id, 0)).toBe(false);
  });

  it('that cannot be asked counts as running for ten minutes', () => {
    for (const id of [
      { ...OWN, host: 'elsewhere' },
      { ...OWN, start: 0 },
    ])
      expect([alive(id, minutes(9)), alive(id, minutes(11))]).toEqual([true, false]);
  });
});
