import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  closeSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contents, put } from './shelf.ts';
import { JOB, NOBODY, PLAN, ROOT, SHOP, shopFolder } from './shop-folder.ts';

const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

const { path, at, text, inside } = shopFolder();

describe('inputs that are no plain files', () => {
  it.skipIf(!existsSync('/proc/kmsg'))(
    'end every command at once, with 2 (wants /dev, /proc and mkfifo)',
    async () => {
      expect(spawnSync('mkfifo', [at('pipe')]).status).toBe(0);
      writeFileSync(at('readings.yaml'), 'printer: office\nsheets:\n  - {across: 199.3, down: 199.6}\n');
      const before = readdirSync(path()).sort();
      const calls: readonly (readonly string[])[] = [
        ...['/dev/zero', '/dev/full', 'pipe', '/proc/kmsg', '/proc/self/environ', '/proc/self'].map((path) => [
          'check',
          path,
        ]),
        ['pattern', 'job.yaml', '--shop', 'pipe'],
        ['stock', '--cut', '4127-0936', '--shop', '/dev/zero'],
        ['calibrate', 'printer', 'pipe'],
        ['calibrate', 'printer', 'readings.yaml', '--shop', '/dev/null'],
        ['make', 'job.yaml', '/dev/zero', '--all-or-none'],
      ];
      for (const args of calls) {
        const ran = await inside(args, { limitMs: 20_000 });
        expect([args, ran.code, ran.out]).toEqual([args, 2, '']);
        expect(ran.err).toMatch(/no plain file|is a folder|cannot be read/u);
        expect(ran.err).not.toMatch(/^ +at /mu);
      }
      expect(readdirSync(path()).sort()).toEqual(before);
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
        ['stock', '--undo', '--shop', 'device'],
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
    put(path(), { 'print.yaml': JOB.replace('13}', '13, picture: proof.png}') });
    const refused = async (args: readonly string[], words: string): Promise<void> => {
      const before = contents(path());
      const ran = await inside(args);
      expect([args, ran.code]).toEqual([args, 2]);
      expect(ran.err).toContain(words);
      expect(contents(path())).toEqual(before);
    };
    await refused(['proof', 'print.yaml', '--png', '--out', '.'], 'would be written over the picture');
    mkdirSync(at('out'));
    symlinkSync('../proof.png', at('out/proof.png'));
    await refused(['proof', 'print.yaml', '--png', '--out', 'out'], 'would be written over the picture');
    rmSync(at('out/proof.png'));
    linkSync(at('proof.png'), at('out/proof.png'));
    await refused(['proof', 'print.yaml', '--png', '--out', 'out'], 'would be written over the picture');
    put(path(), { 'pattern-1.svg': JOB });
    await refused(['pattern', 'pattern-1.svg', '--svg', '--out', '.'], 'would be written over the job');
    put(path(), { 'job/pattern-1.svg': SHOP });
    await refused(
      ['pattern', 'job.yaml', '--svg', '--shop', 'job/pattern-1.svg'],
      "would be written over the shop's file",
    );
    put(path(), {
      'all.yaml': JOB,
      'all/manifest.json': '{"openings": [{"artwork": "10 x 13"}], "mat": {"border": 3}}',
    });
    await refused(
      ['make', 'all.yaml', 'all/manifest.json', '--all-or-none', '--out', '.'],
      'would be written over the job',
    );
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
    put(path(), { 'job/pattern-1.pdf': 'an earlier one' });
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

  it('that cannot take their names leave the journal of plans as it was', async () => {
    mkdirSync(at('job/stock.pdf'), { recursive: true });
    const barred = await inside(PLAN);
    expect([barred.code, barred.err]).toEqual([2, expect.stringContaining('stock.pdf is a folder')]);
    expect(existsSync(at('shop.plans.json'))).toBe(false);
    rmSync(at('job'), { recursive: true });
    const { plan } = JSON.parse((await inside([...PLAN, '--json'])).out).stock;
    mkdirSync(at('away'));
    renameSync(at('shop.plans.json'), at('away/plans.json'));
    mkdirSync(at('shop.plans.json'));
    const lost = await inside(['stock', '--cut', plan.number]);
    expect([lost.code, lost.err, text('shop.yaml')]).toEqual([2, expect.stringContaining('is a folder'), SHOP]);
  }, 60_000);

  it('beside a shop that can only be read are made, and said not to be booked', async () => {
    mkdirSync(at('shelf'));
    put(path(), { 'shelf/shop.yaml': SHOP });
    chmodSync(at('shelf'), 0o555);
    chmodSync(path(), 0o777);
    const ran = await inside([...PLAN, '--shop', 'shelf/shop.yaml', '--out', 'out'], ROOT ? { uid: NOBODY } : {});
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.out).toMatch(/plan \d{4}-\d{4} cannot be booked: nothing can be written beside shelf\/shop\.yaml/u);
    chmodSync(at('shelf'), 0o755);
    expect([readdirSync(at('out')).sort(), readdirSync(at('shelf'))]).toEqual([
      ['.matwright.json', 'stock.pdf'],
      ['shop.yaml'],
    ]);
  }, 60_000);
});
