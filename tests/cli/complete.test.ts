import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { built } from '../built.ts';
import { run } from './run.ts';

const asked = async (...words: readonly string[]): Promise<readonly string[]> => {
  const ran = await run(['complete', '--', ...words]);
  expect([ran.code, ran.err]).toEqual([0, '']);
  return ran.out.trimEnd().split('\n');
};

const FILES = ':0';
const NO_FILES = ':4';

describe('a shell that asks', () => {
  it('gets every command of the table, with its summary', async () => {
    expect(await asked('')).toEqual([...COMMANDS.map(({ name, summary }) => `${name}\t${summary}`), NO_FILES]);
    expect((await asked('st'))[0]).toMatch(/^stock\t/u);
  });

  it('gets every option of a command', async () => {
    for (const { name } of COMMANDS) {
      const help = (await run([name, '--help'])).out;
      const listed = [...help.matchAll(/^ {2}(?:-\w, )?--([a-z-]+)/gmu)].map(([, option]) => `--${option}`);
      const options = (await asked(name, '--')).slice(0, -1).map((line) => line.split('\t')[0]!);
      expect([name, options.sort()]).toEqual([name, listed.filter((option) => option !== '--help').sort()]);
    }
  });

  it('gets the words that an option or an argument takes', async () => {
    const words = async (...typed: readonly string[]) => (await asked(...typed)).map((line) => line.trim());
    expect(await words('pattern', 'job.yaml', '--extent', '')).toEqual(['whole', 'corners', NO_FILES]);
    expect(await words('pattern', '--paper', 'lette')).toEqual(['letter', NO_FILES]);
    expect(await words('cutfile', '--format', '')).toEqual(['svg', 'dxf', 'hpgl', NO_FILES]);
    expect(await words('schema', '')).toEqual(['job', 'shop', NO_FILES]);
    expect(await words('jig', 'pri')).toEqual(['printer', NO_FILES]);
    expect(await words('calibrate', 'gui')).toEqual(['guide', NO_FILES]);
    expect(await words('new', 'sho')).toEqual(['shop', NO_FILES]);
  });

  it('is told to look for files where one is wanted', async () => {
    expect(await asked('pattern', 'exa')).toEqual([FILES]);
    expect(await asked('check', '')).toEqual([FILES]);
    expect(await asked('check', '--shop', '')).toEqual([FILES]);
    expect(await asked('check', '--nothing')).toEqual([NO_FILES]);
  });
});

describe('the script for a shell', () => {
  it('is printed for each of them, and asked for by name', async () => {
    expect((await run(['complete', 'zsh'])).out).toMatch(/^#compdef matwright\n/u);
    expect((await run(['complete', 'fish'])).out).toContain('complete -c matwright');
    for (const args of [['complete'], ['complete', 'tcsh']]) expect((await run(args)).code).toBe(2);
  });

  it('completes in bash, also without its helpers', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
    try {
      const program = join(folder, 'matwright');
      writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${join(await built(), 'cli.js')}" "$@"\n`);
      chmodSync(program, 0o755);
      const tries = `source <(matwright complete bash)
complete -p matwright
try() { COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMPREPLY=(); __matwright_complete; echo "\${COMPREPLY[@]}"; }
compopt() { :; }
try matwright sto
try matwright pattern --pap
try matwright schema ""
`;
      const env = { ...process.env, PATH: `${folder}:${process.env.PATH}` };
      const ran = spawnSync('bash', ['--norc', '-c', tries], { env, encoding: 'utf8' });
      expect([ran.stderr, ran.stdout]).toEqual([
        '',
        'complete -o default -F __matwright_complete matwright\nstock\n--paper\njob shop\n',
      ]);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }, 120_000);
});
