import { chmodSync, existsSync, linkSync, lstatSync, mkdirSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Inputs } from '../../../src/cli/files/inputs.ts';
import type { Known } from '../../../src/cli/files/this-run.ts';
import { writeSet } from '../../../src/cli/files/write-set.ts';
import { UsageError } from '../../../src/cli/usage.ts';
import { fails, faulty, placeOf } from './faulty.ts';
import { KNOWN, next, stepsOf } from './runs.ts';
import { bytes, contents, inFolder, NEW, OLD, pieces, put } from './shelf.ts';

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
        const known: Known = { ...KNOWN, inputs: new Inputs([{ path: join(top, path), role: 'picture' }]) };
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
      await writeSet(pieces(top), {
        ...KNOWN,
        inputs: new Inputs([{ path: join(top, 'shop/shop.yaml'), role: "shop's file" }]),
      });
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
