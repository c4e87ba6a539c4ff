import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ChangedMeanwhile, type Piece } from '../../../src/cli/files/plan.ts';
import { writeSet } from '../../../src/cli/files/write-set.ts';
import { faulty, placeOf } from './faulty.ts';
import { KNOWN, stepsOf } from './runs.ts';
import { bytes, contents, inFolder, OLD, pieces } from './shelf.ts';

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

  it('who changes it at any step while it is changed alone neither', async () => {
    const set = (top: string): readonly Piece[] => pieces(top).filter(({ was }) => was !== undefined);
    const steps = await stepsOf(OLD, set);
    let kept = 0;
    for (let step = 0; step < steps; step += 1) {
      await inFolder(OLD, async (top) => {
        const shop = join(top, 'shop/shop.yaml');
        let renaming = false;
        const { disk } = faulty((done, name) => {
          if (done !== step) return;
          renaming = name === 'rename';
          if (!renaming) writeFileSync(shop, 'by hand');
        });
        await writeSet(set(top), KNOWN, placeOf(1, disk)).catch(() => {
          kept += 1;
        });
        if (!renaming) expect(contents(top), `step ${step}`).toEqual({ ...OLD, 'shop/shop.yaml': 'by hand' });
      });
    }
    expect(kept).toBeGreaterThan(8);
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
