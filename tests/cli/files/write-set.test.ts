import { chmodSync, existsSync, linkSync, lstatSync, mkdirSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DISK } from '../../../src/cli/files/disk.ts';
import { ChangedMeanwhile, type Piece } from '../../../src/cli/files/plan.ts';
import { recover } from '../../../src/cli/files/recover.ts';
import type { Known } from '../../../src/cli/files/this-run.ts';
import { writeSet } from '../../../src/cli/files/write-set.ts';
import { UsageError } from '../../../src/cli/usage.ts';
import { fails, faulty, Killed, killedAt, placeOf } from './faulty.ts';
import { bytes, type Contents, contents, inFolder, NEW, OLD, pieces, put } from './shelf.ts';

const KNOWN: Known = { inputs: [], doubtful: [] };

/** Runs once without a fault, to know how many steps there are. */
const stepsOf = (given: Contents, set: (top: string) => readonly Piece[]): Promise<number> =>
  inFolder(given, async (top) => {
    const { disk, steps } = faulty(() => undefined);
    await writeSet(set(top), KNOWN, placeOf(1, disk));
    return steps();
  });

/** Whoever comes next: puts both folders in order, as reading the shop's file and writing the plan do. */
async function next(top: string, pid: number, disk = DISK): Promise<readonly string[]> {
  const place = placeOf(pid, disk, pid - 1);
  const found = [...(await recover(join(top, 'shop'), place)), ...(await recover(join(top, 'out'), place))];
  return found.map(({ words }) => words);
}

describe('a set of files', () => {
  it('gets its names at once, and leaves nothing else behind', () =>
    inFolder(OLD, async (top) => {
      expect(await writeSet(pieces(top), KNOWN)).toEqual([]);
      expect(contents(top)).toEqual(NEW);
    }));

  it('makes its folder, and takes it away again where it fails', () =>
    inFolder({}, async (top) => {
      const one = { file: join(top, 'a/b/one.pdf'), bytes: bytes('one') };
      const { disk } = faulty((_, name) => (name === 'rename' ? fails('EIO') : undefined));
      await expect(writeSet([one], KNOWN, placeOf(1, disk))).rejects.toThrow(/one\.pdf cannot be written: .*\(EIO\)/u);
      expect(existsSync(join(top, 'a'))).toBe(false);
      await writeSet([one], KNOWN);
      expect(contents(top)).toEqual({ 'a/b/one.pdf': 'one' });
    }));

  it('keeps modes, and links as links', () =>
    inFolder(OLD, async (top) => {
      chmodSync(join(top, 'out/stock.pdf'), 0o640);
      symlinkSync('../shop/shop.yaml', join(top, 'out/shop.yaml'));
      const linked = pieces(top).map((piece) =>
        piece.was === undefined ? piece : { ...piece, file: join(top, 'out/shop.yaml') },
      );
      await writeSet(linked, KNOWN);
      expect(statSync(join(top, 'out/stock.pdf')).mode & 0o777).toBe(0o640);
      expect(lstatSync(join(top, 'out/shop.yaml')).isSymbolicLink()).toBe(true);
      expect(contents(join(top, 'shop'))).toEqual({ 'shop.yaml': 'new shop' });
    }));

  it('is refused whole where one of it cannot be', async () => {
    const refused = (spoil: (top: string) => void, words: RegExp) =>
      inFolder(OLD, async (top) => {
        spoil(top);
        const before = contents(top);
        const problem = await writeSet(pieces(top), KNOWN).catch((thrown: unknown) => thrown);
        expect(problem).toBeInstanceOf(UsageError);
        expect((problem as Error).message).toMatch(words);
        expect(contents(top)).toEqual(before);
      });
    await refused((top) => mkdirSync(join(top, 'out/stock-2.svg')), /stock-2\.svg is a folder/u);
    await refused(
      (top) => symlinkSync('nowhere', join(top, 'out/stock-2.svg')),
      /stock-2\.svg is a link that leads nowhere/u,
    );
    await refused((top) => chmodSync(join(top, 'out/stock.pdf'), 0o444), /stock\.pdf is read-only/u);
    await refused((top) => put(top, { 'shop/shop.yaml': 'by hand' }), /shop\.yaml was changed by something else/u);
    await refused(
      (top) => symlinkSync('stock.pdf', join(top, 'out/stock-2.svg')),
      /stock\.pdf and .*stock-2\.svg are one file/u,
    );
  });

  it('goes over nothing that was read, by no way', async () => {
    const refused = (path: string, spoil: (top: string) => void) =>
      inFolder({ ...OLD, 'prints/heron.jpg': 'picture' }, async (top) => {
        spoil(top);
        const known: Known = { ...KNOWN, inputs: [{ path: join(top, path), role: 'picture' }] };
        const before = contents(top);
        await expect(writeSet(pieces(top), known)).rejects.toThrow(/would be written over the picture/u);
        expect(contents(top)).toEqual(before);
      });
    await refused('out/stock.pdf', () => undefined);
    await refused('prints/heron.jpg', (top) => linkSync(join(top, 'prints/heron.jpg'), join(top, 'out/stock-2.svg')));
    await refused('prints/heron.jpg', (top) => symlinkSync('../prints/heron.jpg', join(top, 'out/stock-2.svg')));
    await refused('link.jpg', (top) => symlinkSync('out/stock.pdf', join(top, 'link.jpg')));
    // The shop's file may be changed, but not where it is read as something else too.
    await refused('shop/shop.yaml', () => undefined);
    await inFolder(OLD, async (top) => {
      await writeSet(pieces(top), { ...KNOWN, inputs: [{ path: join(top, 'shop/shop.yaml'), role: "shop's file" }] });
      expect(contents(top)).toEqual(NEW);
    });
  });
});

describe('a step that fails', () => {
  it('has all of the set taken back, whichever it is and whatever the system says', async () => {
    const steps = await stepsOf(OLD, pieces);
    expect(steps).toBeGreaterThan(40);
    let refused = 0;
    for (let step = 0; step < steps; step += 1) {
      for (const code of ['ENOSPC', 'EACCES']) {
        await inFolder(OLD, async (top) => {
          const { disk } = faulty((done) => (done === step ? fails(code) : undefined));
          const problem = await writeSet(pieces(top), KNOWN, placeOf(1, disk)).catch((thrown: unknown) => thrown);
          // A failure while it cleans up comes after all is done: the next run does that.
          if (problem instanceof Error) {
            refused += 1;
            expect(problem.message, `step ${step}`).toContain(`(${code})`);
            expect([problem.message, problem instanceof UsageError]).toEqual([problem.message, code === 'EACCES']);
          }
          await next(top, 2);
          expect(contents(top), `step ${step}`).toEqual(problem instanceof Error ? OLD : NEW);
        });
      }
    }
    expect(refused).toBeGreaterThan(60);
  });

  it('tells what cannot be taken back either, and the next run does it', () =>
    inFolder(OLD, async (top) => {
      let renamed = 0;
      const { disk } = faulty((_, name, [from]) => {
        if (name !== 'rename' || String(from).endsWith('4.part')) return;
        renamed += 1;
        if (renamed > 2) fails('EIO');
      });
      await expect(writeSet(pieces(top), KNOWN, placeOf(1, disk))).rejects.toThrow(
        /the next run that writes there tries again/u,
      );
      expect(contents(join(top, 'out'))['stock.pdf']).toBe('new plan');
      expect(await next(top, 2)).toEqual([expect.stringMatching(/stopped while it wrote .*all is as it was before/u)]);
      expect(contents(top)).toEqual(OLD);
    }));
});

describe('a run that is killed', () => {
  it('at any step, is done or has done nothing once the next one has come, which says so', async () => {
    const steps = await stepsOf(OLD, pieces);
    let [back, whole] = [0, 0];
    for (let step = 0; step < steps; step += 1) {
      await inFolder(OLD, async (top) => {
        await writeSet(pieces(top), KNOWN, placeOf(1, killedAt(step).disk)).catch(() => undefined);
        const untouched = JSON.stringify(contents(top)) === JSON.stringify(OLD);
        const words = await next(top, 2);
        const now = contents(top);
        expect([OLD, NEW], `step ${step}`).toContainEqual(now);
        if (now['shop/shop.yaml'] === 'new shop') whole += 1;
        else back += 1;
        if (!untouched && now['shop/shop.yaml'] === 'old shop')
          expect(words.length, `step ${step}`).toBeLessThanOrEqual(2);
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

  it('leaves a file alone that somebody has written since', () =>
    inFolder(OLD, async (top) => {
      let dead = false;
      const { disk } = faulty((_, name, [, to]) => {
        dead ||= name === 'rename' && String(to).endsWith('shop.yaml');
        if (dead) throw new Killed('killed');
      });
      await writeSet(pieces(top), KNOWN, placeOf(1, disk)).catch(() => undefined);
      put(top, { 'out/stock.pdf': 'by hand', 'shop/shop.yaml': 'by hand too' });
      await next(top, 2);
      expect(contents(top)).toEqual({ ...OLD, 'out/stock.pdf': 'by hand', 'shop/shop.yaml': 'by hand too' });
    }));
});

describe('somebody else', () => {
  it('who changes the shop’s file at any step is never written over', async () => {
    const steps = await stepsOf(OLD, pieces);
    let [kept, later] = [0, 0];
    for (let step = 0; step < steps; step += 1) {
      await inFolder(OLD, async (top) => {
        const shop = join(top, 'shop/shop.yaml');
        let renaming = false;
        const { disk } = faulty((done, name, [, to]) => {
          if (done !== step) return;
          // Between the last look and the rename nothing can be seen.
          renaming = name === 'rename' && to === shop;
          if (!renaming) writeFileSync(shop, 'by hand');
        });
        const problem = await writeSet(pieces(top), KNOWN, placeOf(1, disk)).catch((thrown: unknown) => thrown);
        if (renaming) return;
        expect(contents(top)['shop/shop.yaml'], `step ${step}`).toBe('by hand');
        if (problem === undefined || Array.isArray(problem)) later += 1;
        else {
          kept += 1;
          expect(problem).toBeInstanceOf(ChangedMeanwhile);
          expect(contents(top)).toEqual({ ...OLD, 'shop/shop.yaml': 'by hand' });
        }
      });
    }
    expect(kept).toBeGreaterThan(30);
    expect(later).toBeGreaterThan(2);
  });

  it('who makes a file first keeps it, at any step', async () => {
    const set = (top: string): readonly Piece[] => [{ file: join(top, 'job.yaml'), bytes: bytes('ours'), was: null }];
    const steps = await stepsOf({}, set);
    for (let step = 0; step < steps; step += 1) {
      await inFolder({}, async (top) => {
        const { disk } = faulty((done) => {
          if (done === step && !existsSync(join(top, 'job.yaml'))) writeFileSync(join(top, 'job.yaml'), 'theirs');
        });
        const theirs = await writeSet(set(top), KNOWN, placeOf(1, disk)).then(
          () => false,
          () => true,
        );
        expect(contents(top), `step ${step}`).toEqual({ 'job.yaml': theirs ? 'theirs' : 'ours' });
      });
    }
  });
});
