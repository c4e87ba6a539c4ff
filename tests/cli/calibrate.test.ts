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
});
