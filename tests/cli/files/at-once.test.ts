import { rmSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Spawned } from '../spawned.ts';
import { contents, put } from './shelf.ts';
import { JOB, PLAN, SHOP, shopFolder } from './shop-folder.ts';

const { path, at, text, inside } = shopFolder();

describe('several processes at once', () => {
  it('that calibrate each end up in the shop’s file', async () => {
    const names = ['one', 'two', 'three', 'four', 'five', 'six'];
    for (const [i, name] of names.entries())
      put(path(), { [`${name}.yaml`]: `printer: ${name}\nsheets:\n  - {across: ${199 + i / 10}, down: 199.6}\n` });
    const ran = await Promise.all(names.map((name) => inside(['calibrate', 'printer', `${name}.yaml`])));
    expect(ran.map(({ code, err }) => [code, err])).toEqual(names.map(() => [0, '']));
    const shop = text('shop.yaml');
    for (const [i, name] of names.entries())
      expect(shop).toMatch(
        new RegExp(`^  ${name}: \\{x: ${((199 + i / 10) / 200).toFixed(4).replace(/0+$/, '')}`, 'mu'),
      );
    expect(shop.startsWith(SHOP)).toBe(true);
  }, 120_000);

  it('that calibrate with no shop yet make one between them', async () => {
    rmSync(at('shop.yaml'));
    for (const name of ['one', 'two', 'three'])
      put(path(), { [`${name}.yaml`]: `printer: ${name}\nsheets:\n  - {across: 199.3, down: 199.6}\n` });
    const ran = await Promise.all(
      ['one', 'two', 'three'].map((name) => inside(['calibrate', 'printer', `${name}.yaml`])),
    );
    expect(ran.map(({ code, err }) => [code, err])).toEqual([0, 0, 0].map((code) => [code, '']));
    for (const name of ['one', 'two', 'three']) expect(text('shop.yaml')).toContain(`  ${name}: {x: `);
  }, 120_000);

  it('that write into one folder leave the files of one of them', async () => {
    const titles = ['Tern', 'Avocet', 'Curlew', 'Heron'];
    for (const title of titles) put(path(), { [`${title}.yaml`]: JOB.replace('Tern', title) });
    const write = (title: string, out: string): Promise<Spawned> =>
      inside(['pattern', `${title}.yaml`, '--out', out, '--svg', '--tiles']);
    const alone = new Map<string, unknown>();
    for (const title of titles) {
      expect((await write(title, `alone/${title}`)).code).toBe(0);
      alone.set(title, contents(at(`alone/${title}`)));
    }
    const ran = await Promise.all(titles.map((title) => write(title, 'out')));
    expect(ran.map(({ code }) => code)).toEqual([0, 0, 0, 0]);
    expect([...alone.values()]).toContainEqual(contents(at('out')));
  }, 120_000);

  it('that book the same plan book it once: the others are refused', async () => {
    const { plan } = JSON.parse((await inside([...PLAN, '--json'])).out).stock;
    const ran = await Promise.all([1, 2, 3].map(() => inside(['stock', '--cut', plan.number])));
    expect(ran.map(({ code }) => code).sort()).toEqual([0, 2, 2]);
    for (const { code, err } of ran) if (code === 2) expect(err).toContain(`plan ${plan.number} was booked on`);
    expect(text('shop.yaml')).toContain('count: 8');
    expect(text('shop.yaml').match(/id: S/gu)?.length).toBe(plan.change.kept.length);
  }, 120_000);

  it('that plan and book beside each other all end up in the journal', async () => {
    put(path(), { 'two.yaml': JOB.replace('Tern', 'Two') });
    const { plan } = JSON.parse((await inside([...PLAN, '--json'])).out).stock;
    const ran = await Promise.all([
      inside(['stock', '--cut', plan.number]),
      ...[1, 2, 3].map((count) => {
        put(path(), { [`more-${count}.yaml`]: JOB.replace('Tern', `More ${count}`) });
        return inside(['stock', `more-${count}.yaml`, '--effort', '0.005', '--out', `more-${count}`]);
      }),
    ]);
    expect(ran.map(({ code, err }) => [code, err])).toEqual([0, 0, 0, 0].map((code) => [code, '']));
    const { plans } = JSON.parse(text('shop.plans.json'));
    expect(plans.length).toBe(4);
    expect(plans.filter(({ booked }: { booked?: unknown }) => booked !== undefined).length).toBe(1);
  }, 120_000);
});
