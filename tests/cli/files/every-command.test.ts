import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { packed } from '../../packed.ts';
import { spawned } from '../spawned.ts';
import { contents, put } from './shelf.ts';
import { JOB, NOBODY, ROOT, SHOP } from './shop-folder.ts';
import { MOUNTS, mounted } from './small-disk.ts';

/** A command that writes, with what it writes into the folder `out`. */
const COMMANDS: readonly (readonly [args: readonly string[], file: string])[] = [
  [['pattern', 'job.yaml', '--out', 'out'], 'pattern-1.pdf'],
  [['proof', 'job.yaml', '--out', 'out'], 'proof.pdf'],
  [['ticket', 'job.yaml', '--out', 'out'], 'ticket.pdf'],
  [['intake', 'job.yaml', '--out', 'out'], 'intake.pdf'],
  [['placement', 'job.yaml', '--out', 'out'], 'placement.pdf'],
  [['blanks', 'job.yaml', '--out', 'out'], 'blanks.pdf'],
  [['labels', 'job.yaml', '--out', 'out'], 'labels.pdf'],
  [['stock', 'job.yaml', '--effort', '0.005', '--out', 'out'], 'stock.pdf'],
  [['jig', 'printer', '--out', 'out'], 'jig-printer.pdf'],
  [['cutfile', 'job.yaml', '--machine', 'laser', '--out', 'out'], 'cut-laser-1.svg'],
  [['make', 'job.yaml', '--out', 'out'], 'job/pattern-1.pdf'],
  [['page', 'job.yaml', '--out', 'out'], 'matwright.html'],
  [['new', 'single', '--yes', '--out', 'out/new.yaml'], 'new.yaml'],
  [['calibrate', 'printer', 'readings.yaml', '--shop', 'out/shop.yaml'], 'shop.yaml'],
];
/** They write into a file that is there, or make one that must not be there. */
const OF_PEOPLE = ['new', 'calibrate'];

let program = '';
let folder = '';
const inside = (args: readonly string[], more: Parameters<typeof spawned>[1] = {}) =>
  spawned([program, ...args], { cwd: folder, ...more });
const hidden = (): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.matwright-/u.test(name));

function fresh(): void {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  chmodSync(folder, 0o755);
  put(folder, {
    'job.yaml': JOB,
    'shop.yaml': SHOP,
    'readings.yaml': 'printer: office\nsheets:\n  - {across: 199.3, down: 199.6}\n',
    'out/shop.yaml': SHOP,
  });
}

beforeAll(async () => {
  const installed = await packed();
  // Whoever may do less than the one who installed it reads it too.
  chmodSync(dirname(installed), 0o755);
  program = join(installed, 'node_modules/matwright/dist/cli.js');
}, 240_000);
beforeEach(fresh);
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe.each(COMMANDS)('%j, as packed and installed', (args, file) => {
  const [command] = args as [string];

  it('says why, with 2, and changes nothing where the folder can only be read, or something else has the name', async () => {
    chmodSync(join(folder, 'out'), 0o555);
    const before = contents(folder);
    const barred = await inside(args, ROOT ? { uid: NOBODY } : {});
    expect([barred.code, barred.err]).toEqual([2, expect.stringMatching(/not permitted here|cannot be made/u)]);
    chmodSync(join(folder, 'out'), 0o755);
    expect(contents(folder)).toEqual(before);
    if (command !== 'calibrate') mkdirSync(join(folder, 'out', file), { recursive: true });
    else {
      rmSync(join(folder, 'out', file));
      mkdirSync(join(folder, 'out', file));
    }
    const foreign = await inside(args);
    expect([foreign.code, foreign.err]).toEqual([2, expect.stringMatching(/is a folder|is there already/u)]);
    expect([hidden(), foreign.err.match(/^ +at /mu)]).toEqual([[], null]);
  }, 60_000);

  it.skipIf(!MOUNTS)(
    'ends with 1 on a full disk and leaves it as it is (wants root and mount)',
    async () => {
      const disk = join(folder, 'out');
      const unmount = mounted(disk, '64k');
      try {
        put(disk, { 'shop.yaml': SHOP });
        // What does not fit is cut off, and then nothing more does.
        expect(() => writeFileSync(join(disk, 'filler'), Buffer.alloc(128 * 1024))).toThrow('ENOSPC');
        const before = contents(folder);
        const full = await inside(args);
        expect([full.code, full.err]).toEqual([1, expect.stringContaining('the disk is full (ENOSPC)')]);
        expect(full.err).not.toMatch(/^ +at /mu);
        expect(contents(folder)).toEqual(before);
      } finally {
        unmount();
      }
    },
    60_000,
  );

  it('leaves whole files where two run at once, or one is killed', async () => {
    const start = performance.now();
    const both = await Promise.all([inside(args), inside(args)]);
    const spent = performance.now() - start;
    expect(both.map(({ code }) => code).sort()).toEqual(command === 'new' ? [0, 2] : [0, 0]);
    const whole = timeless(contents(join(folder, 'out')));
    expect(Object.keys(whole)).toContain(file);
    rmSync(folder, { recursive: true });
    fresh();
    const child = spawn(process.execPath, [program, ...args], { cwd: folder, stdio: 'ignore' });
    const ended = new Promise((resolve) => child.on('close', resolve));
    await pause(0.8 * spent);
    child.kill('SIGKILL');
    await ended;
    const again = await inside(args);
    // A file that people write in may be there already: then that is said.
    expect(again.code === 0 || (OF_PEOPLE.includes(command) && again.code === 2)).toBe(true);
    if (command !== 'calibrate') expect(timeless(contents(join(folder, 'out')))).toEqual(whole);
    expect(hidden()).toEqual([]);
  }, 120_000);
});

/** A list of what was made may lack what another run made at the same moment; all else is the same. */
const timeless = (files: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(files).filter(([name]) => !name.endsWith('.matwright.json')));
