import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DISK } from '../../../src/cli/files/disk.ts';
import { hiddenName } from '../../../src/cli/files/names.ts';
import { writeSet } from '../../../src/cli/files/write-set.ts';
import { faulty, Killed, killedAt, placeOf } from './faulty.ts';
import { KNOWN, next, stepsOf } from './runs.ts';
import { bytes, contents, inFolder, NEW, OLD, pieces, put } from './shelf.ts';

describe('a run that is killed', () => {
  it('at any step, is done or has done nothing once the next one has come, which says so', async () => {
    const steps = await stepsOf(OLD, pieces);
    let [back, whole] = [0, 0];
    for (let step = 0; step < steps; step += 1) {
      await inFolder(OLD, async (top) => {
        await writeSet(pieces(top), KNOWN, placeOf(1, killedAt(step).disk)).catch(() => undefined);
        const then = contents(top);
        // Whoever only reads the shop's file may believe it at any moment: it comes last.
        if (then['shop/shop.yaml'] === 'new shop') expect(then, `step ${step}`).toMatchObject(NEW);
        const words = await next(top, 2);
        const now = contents(top);
        expect([OLD, NEW], `step ${step}`).toContainEqual(now);
        if (now['shop/shop.yaml'] === 'new shop') whole += 1;
        else back += 1;
        // What was half done is told.
        const renamed = then['out/stock.pdf'] === 'new plan' && now['out/stock.pdf'] === 'old plan';
        if (renamed) expect(words, `step ${step}`).toContainEqual(expect.stringContaining('all is as it was before'));
      });
    }
    expect(back).toBeGreaterThan(30);
    expect(whole).toBeGreaterThan(2);
  });

  it('as well where the one that puts it in order is killed too, at any step', async () => {
    const steps = await stepsOf(OLD, pieces);
    let twice = 0;
    for (let step = 20; step < steps; step += 1) {
      for (let second = step % 2; ; second += 2) {
        const over = await inFolder(OLD, async (top) => {
          await writeSet(pieces(top), KNOWN, placeOf(1, killedAt(step).disk)).catch(() => undefined);
          const done = await next(top, 2, killedAt(second).disk).then(
            () => true,
            (problem: unknown) => {
              expect(problem).toBeInstanceOf(Killed);
              return false;
            },
          );
          twice += done ? 0 : 1;
          await next(top, 3);
          expect([OLD, NEW], `steps ${step} and ${second}`).toContainEqual(contents(top));
          return done;
        });
        if (over) break;
      }
    }
    expect(twice).toBeGreaterThan(150);
  }, 60_000);

  it('is put in order by the next run that writes there, before it writes', () =>
    inFolder(OLD, async (top) => {
      let dead = false;
      const { disk } = faulty((_, name, [from]) => {
        dead ||= name === 'rename' && String(from).endsWith('.2.part');
        if (dead) throw new Killed('killed');
      });
      await writeSet(pieces(top), KNOWN, placeOf(1, disk)).catch(() => undefined);
      expect(contents(top)['out/stock.pdf']).toBe('new plan');
      const found = await writeSet(
        [{ file: join(top, 'out/proof.pdf'), bytes: bytes('proof') }],
        KNOWN,
        placeOf(2, DISK, 1),
      );
      expect(found.map(({ words }) => words)).toEqual([expect.stringMatching(/stopped while it wrote .*stock\.pdf/u)]);
      expect(contents(top)).toEqual({ ...OLD, 'out/proof.pdf': 'proof' });
    }));

  it('and had just changed the shop’s file keeps the next one from changing it twice unseen', () =>
    inFolder(OLD, async (top) => {
      let dead = false;
      const { disk } = faulty((_, name, [path]) => {
        dead ||= name === 'remove' && String(path).endsWith('.journal');
        if (dead) throw new Killed('killed');
      });
      await writeSet(pieces(top), KNOWN, placeOf(1, disk)).catch(() => undefined);
      expect(contents(top)).toMatchObject(NEW);
      const again = pieces(top).map((piece) =>
        piece.was === undefined ? piece : { ...piece, was: bytes('new shop') },
      );
      const place = placeOf(2, DISK, 1);
      await expect(writeSet(again, KNOWN, place)).rejects.toThrow(
        /had been changed already by a run that was stopped/u,
      );
      expect(contents(top)).toEqual(NEW);
      await writeSet(again, KNOWN, place);
    }));

  it('while it takes back, since a new file has vanished, is not taken for one that was done', async () => {
    // Two steps later it has noted that it takes back.
    for (let later = 2; later < 14; later += 1) {
      await inFolder(OLD, async (top) => {
        let [vanished, since, dead] = [false, 0, false];
        const { disk } = faulty((_, name, [from, to]) => {
          if (dead) throw new Killed('killed');
          if (vanished) {
            dead = since === later;
            since += 1;
            if (dead) throw new Killed('killed');
          }
          if (vanished || name !== 'rename' || !String(to).endsWith('shop.yaml')) return;
          rmSync(String(from));
          vanished = true;
        });
        await expect(writeSet(pieces(top), KNOWN, placeOf(1, disk))).rejects.toThrow(Error);
        await next(top, 2);
        expect(contents(top), `${later} steps later`).toEqual(OLD);
      });
    }
  });

  it('between two looks of another one is seen by it all the same', () =>
    inFolder(OLD, async (top) => {
      const left = join(top, 'out', hiddenName('1-1-bench-99', 'part', 0));
      let came = false;
      const { disk } = faulty((_, name, [path]) => {
        if (came || name !== 'create' || !String(path).endsWith('.lock')) return;
        came = true;
        writeFileSync(left, 'half');
      });
      await writeSet(pieces(top), KNOWN, placeOf(2, disk, 1));
      expect([came, contents(top)]).toEqual([true, NEW]);
    }));

  it('leaves a file alone that somebody has written since', () =>
    inFolder(OLD, async (top) => {
      let dead = false;
      const { disk } = faulty((_, name, [, to]) => {
        dead ||= name === 'rename' && String(to).endsWith('shop.yaml');
        if (dead) throw new Killed('killed');
      });
      await writeSet(pieces(top), KNOWN, placeOf(1, disk)).catch(() => undefined);
      const theirs = { 'out/stock.pdf': 'by hand', 'out/stock-2.svg': 'too', 'shop/shop.yaml': 'and this' };
      put(top, theirs);
      await next(top, 2);
      expect(contents(top)).toEqual({ ...OLD, ...theirs });
    }));
});
