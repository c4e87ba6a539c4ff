import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run } from './run.ts';

const shop = '# Saltmarsh Print Room\nunits: in\nprinters:\n  office: {x: 0.999, y: 1.001}   # the old drum\n';
const readings = 'printer: office\nsheets:\n  - {across: 199.3, down: 199.6}\n';

describe('calibrate', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'matwright-'));
    await writeFile(join(folder, 'shop.yaml'), shop);
    await writeFile(join(folder, 'readings.yaml'), readings);
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const file = () => join(folder, 'readings.yaml');
  const shopNow = () => readFile(join(folder, 'shop.yaml'), 'utf8');

  it('writes what was measured into the shop beside the readings, and says so', async () => {
    const ran = await run(['calibrate', 'printer', file()]);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.out).toContain('across  0.9965 ± 0.0013');
    expect(ran.out).toContain('written to ');
    const now = await shopNow();
    expect(now).toMatch(/office: \{x: 0\.9965, y: 0\.998, date: \d{4}-\d\d-\d\d\} {3}# the old drum/u);
    expect(now.startsWith('# Saltmarsh Print Room\nunits: in\n')).toBe(true);
    expect((await readdir(folder)).sort()).toEqual(['readings.yaml', 'shop.yaml']);
  });

  it('--dry-run and wrong readings leave the shop as it is', async () => {
    const dry = await run(['calibrate', 'printer', file(), '--dry-run']);
    expect(dry.out).toContain('not written to');
    await writeFile(file(), 'printer: offce\nsheets:\n  - {across: 199.3}\n');
    const ran = await run(['calibrate', 'printer', file()]);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('readings.yaml:3:5  sheets[0].down  down is missing');
    expect(await shopNow()).toBe(shop);
  });

  it('--json is one document with the numbers', async () => {
    const ran = await run(['calibrate', 'printer', file(), '--json']);
    const made = JSON.parse(ran.out) as { x: { scale: number }; warnings: unknown[] };
    expect(made.x.scale).toBeCloseTo(0.9965, 9);
    expect(made.warnings).toEqual([]);
    await writeFile(file(), 'printer: [');
    const wrong = JSON.parse((await run(['calibrate', 'printer', file(), '--json'])).out) as { problems: unknown[] };
    expect(wrong.problems).toHaveLength(1);
  });

  it('offers a printer at 97 % and writes it with --yes alone', async () => {
    await writeFile(file(), 'printer: office\nmadeFor: a4\npaper: a4\nline: 100\nsheets: [{across: 97, down: 97.1}]\n');
    const ran = await run(['calibrate', 'printer', file()]);
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('offered, not written: --yes takes it');
    expect(await shopNow()).toBe(shop);
    const json = JSON.parse((await run(['calibrate', 'printer', file(), '--json'])).out) as object;
    expect(json).toMatchObject({ offered: expect.stringContaining('97.00 %') });
    expect(json).not.toHaveProperty('shop');
    expect((await run(['calibrate', 'printer', file(), '--yes'])).out).not.toContain('offered');
    expect(await shopNow()).toContain('x: 0.97, y: 0.971');
  });

  it('leaves a read-only shop alone, and loses nothing', async () => {
    await chmod(join(folder, 'shop.yaml'), 0o444);
    const ran = await run(['calibrate', 'printer', file()]);
    expect([ran.code, ran.err]).toEqual([2, expect.stringMatching(/shop\.yaml is read-only.*nothing was changed/u)]);
    expect(await shopNow()).toBe(shop);
    expect((await readdir(folder)).sort()).toEqual(['readings.yaml', 'shop.yaml']);
  });

  it('begins a shop where there is none', async () => {
    await rm(join(folder, 'shop.yaml'));
    const ran = await run(['calibrate', 'printer', file()]);
    expect(ran.code).toBe(0);
    expect(await shopNow()).toMatch(/^# The shop.*\nprinters:\n {2}office: \{?/u);
  });

  it('without a file it asks, which takes a terminal', async () => {
    const ran = await run(['calibrate', 'printer']);
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('takes a terminal')]);
  });

  it('another kind is refused with the nearest', async () => {
    const ran = await run(['calibrate', 'heads', file()]);
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('did you mean head?')]);
  });

  describe('from the coupon of a machine', () => {
    const MACHINES = `# Saltmarsh Print Room
units: mm
machines:
  # behind the door
  big-laser: {kind: laser, kerf: 0.1}   # new tube
  plotter:
    kind: knife
    offset: 0.25   # as sold
  mill: {kind: bevel, bevel: 45, start: [{thickness: 3, offset: 1}], stop: [{thickness: 3, offset: 0.5}], overrun: 0.3}
`;
    const calibrated = async (kind: string, text: string, ...more: string[]) => {
      await writeFile(join(folder, 'shop.yaml'), MACHINES);
      await writeFile(file(), text);
      return run(['calibrate', kind, file(), ...more]);
    };

    it('a laser: kerf and scale, with how sure they are, comments kept', async () => {
      const square = '{pieceX: 29.83, holeX: 30.23, pieceY: 29.81, holeY: 30.19}';
      const ran = await calibrated(
        'laser',
        `machine: big-laser\nstripsX: [98.1, 98.12, 98.08]\nstripsY: [98.1]\nsquare: ${square}\n`,
      );
      expect([ran.code, ran.err]).toEqual([0, '']);
      // By hand: scale x = (29.83 + 30.23)/60 = 1.001, kerf x = 10·1.001 − 98.1/10 = 0.2; scale y 1, kerf y 0.19.
      expect(ran.out).toMatch(/kerf x 0\.200 ± 0\.00\d mm, kerf y 0\.190 ± 0\.00\d mm/u);
      expect(ran.out).toContain('scale x 1.00100 ± 0.0');
      const now = await shopNow();
      expect(now).toContain('  # behind the door\n  big-laser: {kind: laser, kerf: {x: 0.2 mm, y: 0.19 mm}, scale: ');
      expect(now).toContain('}   # new tube\n');
      expect(now).toContain('stripsX: [98.1 mm, 98.12 mm, 98.08 mm]');
    });

    it('a knife, in its own block; one that is new gets its kind', async () => {
      const text = 'machine: plotter\nsides: [40, 40.01]\ndiagonals: [56.23, 56.25]\n';
      const ran = await calibrated('knife', text);
      // (√2 · 40.005 − 56.24) / 1.2464
      expect(ran.out).toMatch(/trails its axis by 0\.269 ± 0\.0\d\d mm/u);
      expect(await shopNow()).toContain('    kind: knife\n    offset: 0.269 mm   # as sold\n');
      await calibrated('knife', text.replace('plotter', 'small'));
      expect(await shopNow()).toContain('  small: {kind: knife, offset: 0.269 mm}');
    });

    it('a bevel head: other thicknesses stay, a wished overrun too', async () => {
      const ends = 'starts: [4.2, 4.2, 4.1, 4.3]\nstops: [2.6, 2.5, 2.7, 2.6]\n';
      const fallout = 'face: [80.2, 80.2]\nback: [77.4, 77.4]\n';
      const ran = await calibrated('bevel-coupon', `machine: mill\nthickness: 1.4\n${ends}${fallout}`);
      expect([ran.code, ran.err]).toEqual([0, '']);
      // Cut 3 mm long: starts 1.2 over, so the blade is 1.2 behind; stops 0.4 short.
      expect(ran.out).toContain('start -1.20 ± ');
      expect(ran.out).toContain('stop -0.40 ± ');
      expect(ran.out).toContain('wishes 0.3 mm, which stays');
      expect(ran.out).toContain('the blade cuts 45.0° ± ');
      expect(ran.out).toContain('0.10 mm outside of their lines: move the head');
      const now = await shopNow();
      expect(now).toContain('start: [{thickness: 1.4 mm, offset: -1.2 mm}, {thickness: 3 mm, offset: 1 mm}]');
      expect(now).toContain(
        'stop: [{thickness: 1.4 mm, offset: -0.4 mm}, {thickness: 3 mm, offset: 0.5 mm}], overrun: 0.3',
      );
    });

    it.each([
      [
        'laser',
        'coupon-machine-kind',
        'machine: plotter\nstripsX: 98\nstripsY: 98\n',
        'readings.yaml:1:10',
        'these are readings of a laser',
      ],
      [
        'laser',
        'machine-unknown',
        'machine: big-lazer\nstripsX: 98\nstripsY: 98\n',
        ':1:10',
        'did you mean big-laser?',
      ],
      [
        'laser',
        'coupon-kerf-absurd',
        'machine: big-laser\nstripsX: 98\nstripsY: 101\n',
        ':3:10',
        'none that a beam makes',
      ],
      [
        'laser',
        'coupon-scale-absurd',
        'machine: l\nstripsX: 98\nstripsY: 98\nsquare: {pieceX: 20, holeX: 20, pieceY: 30, holeY: 30}\n',
        ':4:',
        'a scale of 0.6667 in x',
      ],
      ['laser', 'readings-none', 'machine: l\nstripsX: []\nstripsY: 98\n', ':2:10', 'the list of readings is empty'],
      ['knife', 'key-missing', 'machine: plotter\nsides: 40\n', ':1:1', 'diagonals is missing'],
      [
        'knife',
        'coupon-offset-absurd',
        'machine: plotter\nsides: 40\ndiagonals: 50\n',
        ':3:12',
        'none that a drag knife has',
      ],
      [
        'bevel-coupon',
        'coupon-reading-unusable',
        'machine: mill\nthickness: 1.4\nstarts: [4]\nstops: [3]\nface: 80\n',
        ':1:1',
        'alone says nothing of the bevel',
      ],
      ['bevel-coupon', 'length-large', 'machine: mill\nthickness: 1.4\nstarts: [4]\nstops: [31]\n', ':4:9', '30 mm'],
      [
        'bevel-coupon',
        'coupon-fallout-absurd',
        'machine: mill\nthickness: 1.4\nstarts: [4]\nstops: [3]\nface: 80\nback: 30\n',
        ':5:7',
        'none of this coupon',
      ],
    ])('%s: %j is refused, the shop stays', async (kind, code, text, place, words) => {
      const told = JSON.parse((await calibrated(kind, text, '--json')).out) as { problems: { code: string }[] };
      expect(told.problems.map((problem) => problem.code)).toContain(code);
      const ran = await calibrated(kind, text);
      expect(ran.code).toBe(2);
      expect(ran.err).toContain(place);
      expect(ran.err).toContain(words);
      expect(await shopNow()).toBe(MACHINES);
    });
  });
});
