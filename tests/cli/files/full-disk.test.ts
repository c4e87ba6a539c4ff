import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contents, put } from './shelf.ts';
import { PLAN, SHOP, shopFolder } from './shop-folder.ts';
import { MOUNTS, mounted } from './small-disk.ts';

const { path, at, inside } = shopFolder();

describe('outputs', () => {
  it.skipIf(!MOUNTS)(
    'onto a full disk end with 1 and leave it as it is (wants root and mount)',
    async () => {
      mkdirSync(at('disk'));
      const unmount = mounted(at('disk'), '256k');
      try {
        put(path(), {
          'disk/pattern-1.pdf': 'an earlier one',
          'disk/stock.pdf': 'an earlier plan',
          'disk/shop.yaml': SHOP,
        });
        const before = contents(at('disk'));
        const ran = await inside(['pattern', 'job.yaml', '--svg', '--out', 'disk']);
        expect([ran.code, ran.err]).toEqual([
          1,
          expect.stringMatching(/pattern-\d\.\w+ cannot be written: the disk is full \(ENOSPC\); nothing was changed/u),
        ]);
        expect(contents(at('disk'))).toEqual(before);
        // Full to the last page.
        writeFileSync(at('disk/filler'), Buffer.alloc(256 * 1024 - 3 * 4096));
        const tight = contents(at('disk'));
        const started = await inside(['new', 'single', '--yes', '--out', 'disk/new.yaml']);
        expect([started.code, contents(at('disk'))]).toEqual([1, tight]);
        // Just so full that one of the files still finds room, but not all: never is a plan without its note, or booked in one alone.
        writeFileSync(at('disk/filler'), Buffer.alloc(256 * 1024 - 4 * 4096 - 16 * 1024));
        const filled = contents(at('disk'));
        for (const size of [0, 4, 8, 12, 16]) {
          writeFileSync(at('disk/more'), Buffer.alloc(size * 1024));
          const planned = await inside([...PLAN, '--out', 'disk', '--shop', 'disk/shop.yaml']);
          rmSync(at('disk/more'));
          const now = contents(at('disk'));
          if (planned.code !== 0) expect([planned.code, now]).toEqual([1, filled]);
          expect(now['stock.pdf'] === 'an earlier plan').toBe(now['shop.plans.json'] === undefined);
        }
        rmSync(at('disk/filler'));
        const made = await inside([...PLAN, '--out', 'disk', '--shop', 'disk/shop.yaml', '--json']);
        const { plan } = JSON.parse(made.out).stock;
        // What does not fit is cut off, and then nothing more does.
        expect(() => writeFileSync(at('disk/more'), Buffer.alloc(256 * 1024))).toThrow('ENOSPC');
        const brim = contents(at('disk'));
        const cut = ['stock', '--cut', plan.number, '--shop', 'disk/shop.yaml'];
        expect([(await inside(cut)).code, contents(at('disk'))]).toEqual([1, brim]);
        rmSync(at('disk/more'));
        expect((await inside(cut)).code).toBe(0);
      } finally {
        unmount();
      }
    },
    120_000,
  );
});
