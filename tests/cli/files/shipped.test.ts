import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  closeSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { built } from '../../built.ts';
import { command, type Spawned } from '../spawned.ts';
import { contents, put } from './shelf.ts';

const ROOT = process.getuid?.() === 0;
const NOBODY = 65534;

const JOB =
  'title: Tern\nmat: {outer: 16 x 20, layers: [{board: a}, {board: a, reveal: 1/4}]}\nopenings: [{artwork: 10 x 13}]\n';
const SHOP = 'boards: {a: {name: Ash grey, sheets: [{size: 32 x 40, count: 9}]}}\n';
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

let folder = '';
const at = (name: string): string => join(folder, name);
const text = (name: string): string => readFileSync(at(name), 'utf8');
const hidden = (): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.includes('.matwright-'));
const inside = (args: readonly string[], more: Parameters<typeof command>[1] = {}): Promise<Spawned> =>
  command(args, { cwd: folder, ...more });

beforeAll(() => built(), 180_000);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  chmodSync(folder, 0o755);
  put(folder, { 'job.yaml': JOB, 'shop.yaml': SHOP });
});
afterEach(() => {
  expect(hidden()).toEqual([]);
  rmSync(folder, { recursive: true, force: true });
});

describe('inputs that are no plain files', () => {
  it.skipIf(!existsSync('/proc/kmsg'))(
    'end every command at once, with 2 (wants /dev, /proc and mkfifo)',
    async () => {
      expect(spawnSync('mkfifo', [at('pipe')]).status).toBe(0);
      writeFileSync(at('readings.yaml'), 'printer: office\nsheets:\n  - {across: 199.3, down: 199.6}\n');
      const before = readdirSync(folder).sort();
      const calls: readonly (readonly string[])[] = [
        ...['/dev/zero', '/dev/full', 'pipe', '/proc/kmsg', '/proc/self/environ', '/proc/self'].map((path) => [
          'check',
          path,
        ]),
        ['pattern', 'job.yaml', '--shop', 'pipe'],
        ['stock', 'job.yaml', '--shelve', '--shop', '/dev/zero'],
        ['calibrate', 'printer', 'pipe'],
        ['calibrate', 'printer', 'readings.yaml', '--shop', '/dev/null'],
        ['make', 'job.yaml', '/dev/zero'],
      ];
      for (const args of calls) {
        const ran = await inside(args, { limitMs: 20_000 });
        expect([args, ran.code, ran.out]).toEqual([args, 2, '']);
        expect(ran.err).toMatch(/no plain file|is a folder|cannot be read/u);
        expect(ran.err).not.toMatch(/^ +at /mu);
      }
      expect(readdirSync(folder).sort()).toEqual(before);
    },
    120_000,
  );

  it.skipIf(!ROOT)(
    'stay what they are, also for root, who may replace a device (wants root)',
    async () => {
      expect(spawnSync('mknod', [at('device'), 'c', '1', '3']).status).toBe(0);
      writeFileSync(at('readings.yaml'), 'printer: office\nsheets:\n  - {across: 199.3, down: 199.6}\n');
      for (const args of [
        ['calibrate', 'printer', 'readings.yaml', '--shop', 'device'],
        ['stock', 'job.yaml', '--shelve', '--shop', 'device'],
        ['new', 'single', '--yes', '--out', 'device'],
      ]) {
        expect((await inside(args)).code).toBe(2);
        expect(lstatSync(at('device')).isCharacterDevice()).toBe(true);
      }
      mkdirSync(at('job'));
      spawnSync('mknod', [at('job/pattern-2.pdf'), 'c', '1', '3']);
      const ran = await inside(['pattern', 'job.yaml']);
      expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('pattern-2.pdf is a device')]);
      expect(readdirSync(at('job'))).toEqual(['pattern-2.pdf']);
    },
    60_000,
  );
});

describe('outputs', () => {
  it('never go over what was read, by whatever way', async () => {
    writeFileSync(at('proof.png'), PNG);
    put(folder, { 'print.yaml': JOB.replace('13}', '13, picture: proof.png}') });
    const refused = async (args: readonly string[], words: string): Promise<void> => {
      const before = contents(folder);
      const ran = await inside(args);
      expect([args, ran.code]).toEqual([args, 2]);
      expect(ran.err).toContain(words);
      expect(contents(folder)).toEqual(before);
    };
    await refused(['proof', 'print.yaml', '--png', '--out', '.'], 'would be written over the picture');
    mkdirSync(at('out'));
    symlinkSync('../proof.png', at('out/proof.png'));
    await refused(['proof', 'print.yaml', '--png', '--out', 'out'], 'would be written over the picture');
    rmSync(at('out/proof.png'));
    linkSync(at('proof.png'), at('out/proof.png'));
    await refused(['proof', 'print.yaml', '--png', '--out', 'out'], 'would be written over the picture');
    put(folder, { 'pattern-1.svg': JOB });
    await refused(['pattern', 'pattern-1.svg', '--svg', '--out', '.'], 'would be written over the job');
    put(folder, { 'job/pattern-1.svg': SHOP });
    await refused(
      ['pattern', 'job.yaml', '--svg', '--shop', 'job/pattern-1.svg'],
      "would be written over the shop's file",
    );
    put(folder, {
      'all.yaml': JOB,
      'all/manifest.json': '{"openings": [{"artwork": "10 x 13"}], "mat": {"border": 3}}',
    });
    await refused(['make', 'all.yaml', 'all/manifest.json', '--out', '.'], 'would be written over the job');
  }, 120_000);

  it.skipIf(!existsSync('/dev/full'))(
    'to a full standard output end with 1 (wants /dev/full)',
    async () => {
      for (const args of [
        ['check', 'job.yaml'],
        ['check', 'job.yaml', '--json'],
        ['schema', 'job'],
        ['--help'],
        ['jig', '--list'],
        ['pattern', 'job.yaml'],
      ]) {
        const stdout = openSync('/dev/full', 'w');
        const ran = await inside(args, { stdout });
        closeSync(stdout);
        expect([args, ran.code]).toEqual([args, 1]);
        expect(ran.err).toContain('matwright: standard output cannot be written: the disk is full (ENOSPC)');
        expect(ran.err).not.toMatch(/^ +at /mu);
      }
    },
    60_000,
  );

  it('into a folder that can only be read end with 2 and leave it as it is', async () => {
    mkdirSync(at('job'));
    put(folder, { 'job/pattern-1.pdf': 'an earlier one' });
    chmodSync(at('job'), 0o555);
    const ran = await inside(['pattern', 'job.yaml'], ROOT ? { uid: NOBODY } : {});
    expect([ran.code, ran.err]).toEqual([
      2,
      expect.stringMatching(
        /pattern-1\.pdf cannot be written: it is not permitted here \(EACCES\); nothing was changed/u,
      ),
    ]);
    expect(readdirSync(at('job'))).toEqual(['pattern-1.pdf']);
    chmodSync(at('job'), 0o755);
    expect(text('job/pattern-1.pdf')).toBe('an earlier one');
  }, 60_000);

  const mounts = ROOT && spawnSync('mount', ['--version']).status === 0 && mountable();
  it.skipIf(!mounts)(
    'onto a full disk end with 1 and leave it as it is (wants root and mount)',
    async () => {
      mkdirSync(at('disk'));
      expect(spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'none', at('disk')]).status).toBe(0);
      try {
        put(folder, {
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
        // Just so full that the plan still finds room, but the shop's file does not.
        writeFileSync(at('disk/filler'), Buffer.alloc(256 * 1024 - 4 * 4096 - 16 * 1024));
        const filled = contents(at('disk'));
        for (const size of [0, 4, 8, 12, 16]) {
          writeFileSync(at('disk/more'), Buffer.alloc(size * 1024));
          const shelved = await inside([
            'stock',
            'job.yaml',
            '--shelve',
            '--out',
            'disk',
            '--shop',
            'disk/shop.yaml',
            '--effort',
            '0.005',
          ]);
          rmSync(at('disk/more'));
          const now = contents(at('disk'));
          if (shelved.code === 0) expect(now['shop.yaml']).not.toBe(SHOP);
          else expect([shelved.code, now]).toEqual([1, filled]);
          expect(now['stock.pdf'] === 'an earlier plan').toBe(now['shop.yaml'] === SHOP);
        }
      } finally {
        spawnSync('umount', [at('disk')]);
      }
    },
    120_000,
  );

  it('that cannot take their names leave the shop’s file as it was, and are booked once when they can', async () => {
    mkdirSync(at('job/stock.pdf'), { recursive: true });
    const shelve = ['stock', 'job.yaml', '--shelve', '--effort', '0.005'];
    const barred = await inside(shelve);
    expect([barred.code, barred.err]).toEqual([2, expect.stringContaining('stock.pdf is a folder')]);
    expect(text('shop.yaml')).toBe(SHOP);
    rmSync(at('job'), { recursive: true });
    expect((await inside(shelve)).code).toBe(0);
    expect(text('shop.yaml')).toContain('count: 8');
  }, 60_000);
});

function mountable(): boolean {
  const there = mkdtempSync(join(tmpdir(), 'matwright-'));
  const could = spawnSync('mount', ['-t', 'tmpfs', 'none', there]).status === 0;
  if (could) spawnSync('umount', [there]);
  rmSync(there, { recursive: true });
  return could;
}

describe('several processes at once', () => {
  it('that calibrate each end up in the shop’s file', async () => {
    const names = ['one', 'two', 'three', 'four', 'five', 'six'];
    for (const [i, name] of names.entries())
      put(folder, { [`${name}.yaml`]: `printer: ${name}\nsheets:\n  - {across: ${199 + i / 10}, down: 199.6}\n` });
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
      put(folder, { [`${name}.yaml`]: `printer: ${name}\nsheets:\n  - {across: 199.3, down: 199.6}\n` });
    const ran = await Promise.all(
      ['one', 'two', 'three'].map((name) => inside(['calibrate', 'printer', `${name}.yaml`])),
    );
    expect(ran.map(({ code, err }) => [code, err])).toEqual([0, 0, 0].map((code) => [code, '']));
    for (const name of ['one', 'two', 'three']) expect(text('shop.yaml')).toContain(`  ${name}: {x: `);
  }, 120_000);

  it('that write into one folder leave the files of one of them', async () => {
    const titles = ['Tern', 'Avocet', 'Curlew', 'Heron'];
    for (const title of titles) put(folder, { [`${title}.yaml`]: JOB.replace('Tern', title) });
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

  it('that shelve the same plan book it once: the others are told to look again', async () => {
    const shelve = ['stock', 'job.yaml', '--shelve', '--effort', '0.005'];
    const ran = await Promise.all([1, 2, 3].map(() => inside(shelve)));
    const done = ran.filter(({ code }) => code === 0).length;
    expect(text('shop.yaml')).toContain(`count: ${9 - done}`);
    for (const { code, err } of ran)
      if (code !== 0) expect([code, err]).toEqual([2, expect.stringContaining('was changed by something else')]);
  }, 120_000);
});
