import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { built } from '../../built.ts';

const job = (title: string): string =>
  `title: ${JSON.stringify(title)}\nunits: mm\nmat: {outer: 120 x 150}\nopenings: [{size: 60 x 80}]\nmake: [pattern, ticket]\n`;

let top = '';
beforeAll(async () => {
  top = mkdtempSync(join(tmpdir(), 'matwright-'));
  for (const folder of ['jobs', 'bin']) mkdirSync(join(top, folder));
  symlinkSync(join(await built(), 'cli.js'), join(top, 'bin', 'matwright'));
  for (const name of ['heron', "the tern's $HOME", '2', '10'])
    writeFileSync(join(top, 'jobs', `${name}.yaml`), job(name));
}, 180_000);
afterAll(() => rmSync(top, { recursive: true }));

const env = () => ({ ...process.env, PATH: [join(top, 'bin'), process.env.PATH].join(delimiter) });
const sh = (script: string) => spawnSync('sh', ['-c', script], { cwd: top, env: env(), encoding: 'utf8' });
function filesIn(folder: string): readonly (readonly [string, string])[] {
  const names = readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' }).sort();
  return names
    .filter((name) => /\.\w+$/u.test(name))
    .map((name) => [name, readFileSync(join(top, folder, name), 'latin1')]);
}

describe('jobs made apart', () => {
  it('by xargs, and collected, are the same day', () => {
    const options = '--number 41 --paper a4';
    expect(sh(`matwright make jobs --out whole --quiet ${options}`).status).toBe(0);
    const list = sh(`matwright make jobs --out day --list ${options}`);
    expect(list.stdout.trimEnd().split('\n')).toHaveLength(4);
    expect(list.stdout).toContain('matwright make jobs/2.yaml --into day/2 --number 41 --paper a4 --quiet');
    const ran = sh(`matwright make jobs --out day --list ${options} | tr '\\n' '\\0' | xargs -0 -n 1 -P 2 sh -c`);
    expect([ran.status, ran.stderr, readdirSync(join(top, 'day')).length]).toEqual([0, '', 4]);
    const collected = sh('matwright make --collect day --paper a4');
    expect([collected.status, collected.stdout]).toEqual([0, expect.stringContaining('4 jobs have not changed')]);
    expect(filesIn('day')).toEqual(filesIn('whole'));
  }, 180_000);

  it('say what does not go together', () => {
    for (const [call, words] of [
      ['make --collect nowhere', 'there is no such folder'],
      ['make --collect jobs', 'no folder in it says which job it is of'],
      ['make jobs --collect day', 'name none'],
      ['make jobs --into day', '--into is the folder of one job, and there are 4'],
    ] as const)
      expect([call, sh(`matwright ${call}`)]).toMatchObject([
        call,
        { status: 2, stderr: expect.stringContaining(words) },
      ]);
  }, 60_000);
});

describe('a day that is watched', () => {
  it('is made again on save, says in a line what changed, and ends by Ctrl-C', async () => {
    const child = spawn('matwright', ['make', 'jobs', '--out', 'watched', '--watch'], { cwd: top, env: env() });
    let said = '';
    child.stdout.on('data', (chunk) => (said += String(chunk)));
    const until = async (words: RegExp): Promise<string> => {
      for (let waited = 0; waited < 60_000; waited += 20) {
        const line = said.split('\n').find((each) => words.test(each));
        if (line !== undefined) return line;
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
      throw new Error(`never said ${words}: ${said}`);
    };
    try {
      await until(/^watching 4 jobs/u);
      const before = readFileSync(join(top, 'watched', 'patterns.pdf'), 'latin1');
      writeFileSync(join(top, 'jobs', 'heron.yaml'), job('heron').replace('60 x 80', '62 x 80'));
      const line = await until(/^heron\.yaml: /u);
      expect(line).toMatch(
        /^heron\.yaml: pattern-1\.pdf, .*ticket\.pdf, \d+ ms \(line 4: openings: \[\{size: 62 x 80\}\]\)$/u,
      );
      for (let waited = 0; readFileSync(join(top, 'watched', 'patterns.pdf'), 'latin1') === before; waited += 50) {
        if (waited > 60_000) throw new Error('what is for all together was never made again');
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
    } finally {
      child.kill('SIGINT');
    }
    expect(await new Promise((resolve) => child.on('close', resolve))).toBe(0);
  }, 180_000);
});
