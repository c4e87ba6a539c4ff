import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { randomSource } from '../../bench/random.ts';
import { built } from '../../built.ts';
import { command } from '../spawned.ts';

/** `KILLS=50` tries more. */
const KILLS = Number(process.env.KILLS ?? 3);
const JOBS = 8;

let top = '';
let whole: ReadonlyMap<string, string> = new Map();
let lastsMs = 0;
beforeAll(async () => {
  top = mkdtempSync(join(tmpdir(), 'matwright-'));
  mkdirSync(join(top, 'jobs'));
  for (let i = 1; i <= JOBS; i++)
    writeFileSync(
      join(top, 'jobs', `${i}.yaml`),
      `number: ${i}\nunits: mm\nmat: {outer: ${200 + 10 * i} x 260}\nopenings: [{size: 100 x 140}]\nmake: [pattern, proof, ticket]\n`,
    );
  const begun = Date.now();
  const ran = await command(make('whole'));
  lastsMs = Date.now() - begun;
  expect([ran.code, ran.err.replaceAll(/^.*warning.*\n/gmu, '')]).toEqual([0, '']);
  whole = filesIn(join(top, 'whole'));
}, 180_000);
afterAll(() => rmSync(top, { recursive: true }));

const make = (out: string): readonly string[] => ['make', join(top, 'jobs'), '--out', join(top, out), '--threads', '2'];

function filesIn(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.\w+$/u.test(name));
  return new Map(names.sort().map((name) => [name, readFileSync(join(folder, name), 'latin1')]));
}

/** What stands under its own name is whole, at whatever moment. Hidden files are for the next run. */
function expectWhole(out: string): void {
  if (!existsSync(join(top, out))) return;
  for (const [name, bytes] of filesIn(join(top, out)))
    if (!/(?:^|[\\/])\.matwright/u.test(name) && !/^(?:index\.html|manifest\.json)$/u.test(name))
      expect([name, bytes.length, bytes === whole.get(name)]).toEqual([name, whole.get(name)?.length, true]);
}

async function stoppedAfter(ms: number, out: string, signal: NodeJS.Signals): Promise<number | null> {
  const child = spawn(process.execPath, [join(await built(), 'cli.js'), ...make(out)], { stdio: 'ignore' });
  const timer = setTimeout(() => child.kill(signal), ms);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      clearTimeout(timer);
      resolve(code);
    });
  });
}

describe('a day that is stopped', () => {
  it('by force, at any moment, leaves whole files, and is finished by the next run as if nothing had been', async () => {
    const { between } = randomSource(17);
    for (let i = 0; i < KILLS; i++) {
      await stoppedAfter(lastsMs * between(0.1, 1), 'killed', 'SIGKILL');
      expectWhole('killed');
    }
    const ran = await command(make('killed'));
    expect(ran.code).toBe(0);
    expect([...filesIn(join(top, 'killed'))]).toEqual([...whole]);
  }, 600_000);

  it('by Ctrl-C ends at once, says so, and is finished by the same call', async () => {
    const code = await stoppedAfter(lastsMs / 2, 'asked', 'SIGINT');
    expect([0, 130]).toContain(code);
    expectWhole('asked');
    const hidden = existsSync(join(top, 'asked'))
      ? [...filesIn(join(top, 'asked')).keys()].filter((name) => /\.matwright-/u.test(name))
      : [];
    expect(hidden).toEqual([]);
    expect((await command(make('asked'))).code).toBe(0);
    expect([...filesIn(join(top, 'asked'))]).toEqual([...whole]);
  }, 180_000);

  it('two at once into one folder both end, and it is the same day', async () => {
    const both = await Promise.all([command(make('both')), command(make('both'))]);
    expect(both.map(({ code }) => code)).toEqual([0, 0]);
    expect([...filesIn(join(top, 'both'))]).toEqual([...whole]);
  }, 180_000);

  it('is the same for any number of threads, order, folder, place on earth, and mask', async () => {
    cpSync(join(top, 'jobs'), join(top, 'elsewhere', 'a b', 'jobs'), { recursive: true });
    const cli = join(await built(), 'cli.js');
    const made = (out: string, jobs: string, threads: number): ReadonlyMap<string, string> => {
      const place = `umask 077; cd '${join(top, 'elsewhere', 'a b')}'; LC_ALL=tr_TR.UTF-8 TZ=Pacific/Chatham`;
      const call = `'${process.execPath}' '${cli}' make ${jobs} --out ${out} --threads ${threads} --quiet`;
      const ran = spawnSync('sh', ['-c', `${place} ${call}`], { encoding: 'utf8' });
      expect([ran.status, ran.stdout]).toEqual([0, '']);
      return filesIn(join(top, 'elsewhere', 'a b', out));
    };
    expect([...made('whole', 'jobs', 1)]).toEqual([...whole]);
    const ofJobs = (files: ReadonlyMap<string, string>) => [...files].filter(([name]) => /[\\/]/u.test(name));
    expect(ofJobs(made('backwards', '$(ls -r jobs/*.yaml)', 3))).toEqual(ofJobs(whole));
  }, 180_000);
});
