import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build, TOP } from '../../src/dev/build.ts';
import { bundleCommands, bundleLibrary } from '../../src/dev/bundle.ts';

const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
const dist = join(folder, 'dist');
const manifest = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as { readonly version: string };

const node = (args: readonly string[]) => spawnSync(process.execPath, args, { cwd: TOP, encoding: 'utf8' });
const check = (where: string) => node([join(where, 'cli.js'), 'check', 'examples/heron/job.yaml', '--json']);

const bundles = (where: string): string => join(where, readdirSync(where).find((name) => /^[0-9a-f]{12}$/.test(name))!);

describe('what the build makes', () => {
  beforeAll(() => build(dist));
  afterAll(() => rmSync(folder, { recursive: true }));

  test('has the same bytes each time', async () => {
    const { files } = await bundleCommands({ top: TOP, commands: ['check'], version: manifest.version });
    expect(Object.keys(files)).toContain('check.js');
    const library = await bundleLibrary(TOP, join(TOP, 'src/index.ts'));
    for (const [where, made] of [[bundles(dist), files] as const, [dist, library] as const])
      for (const [name, text] of Object.entries(made))
        expect(readFileSync(join(where, name), 'utf8') === text, name).toBe(true);
  }, 120_000);

  test('is a command that can be executed', () => {
    const cli = join(dist, 'cli.js');
    expect(readFileSync(cli, 'utf8').split('\n')[0]).toBe('#!/usr/bin/env node');
    expect(statSync(cli).mode & 0o111).toBe(0o111);
    const { status, stdout } = node([cli, '--help']);
    expect(stdout).toContain('matwright');
    expect(status).toBe(0);
  });

  test('takes the bundle of the command whose help is asked', () => {
    const { stdout } = node([join(dist, 'cli.js'), 'help', 'pattern']);
    expect(stdout).toBe(node([join(dist, 'cli.js'), 'pattern', '--help']).stdout);
    expect(stdout).toContain('--paper');
  });

  test('answers the same by a cache, without one and by one that does not fit', () => {
    const { status, stdout } = check(dist);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toHaveProperty('outer', { width: 406.4, height: 508 });
    const bare = join(folder, 'bare');
    cpSync(dist, bare, { recursive: true });
    for (const name of readdirSync(bundles(bare)).filter((file) => file.endsWith('.cache'))) {
      rmSync(join(bundles(bare), name));
    }
    expect(check(bare).stdout).toBe(stdout);
    writeFileSync(join(bundles(bare), 'check.js.cache'), 'made by another version of V8, or cut short');
    expect(check(bare).stdout).toBe(stdout);
  });

  test('has caches that V8 takes', () => {
    const script = `
      const { readFileSync, readdirSync } = require('node:fs');
      const names = readdirSync('.').filter((name) => name.endsWith('.cache'));
      for (const name of names) {
        const source = readFileSync(name.slice(0, -'.cache'.length), 'latin1');
        const { cachedDataRejected } = new (require('node:vm').Script)(source, { cachedData: readFileSync(name) });
        console.log(name, cachedDataRejected);
      }`;
    const { stdout } = spawnSync(process.execPath, ['-e', script], { cwd: bundles(dist), encoding: 'utf8' });
    const lines = stdout.trim().split('\n');
    expect(lines).toContain('pattern.js.cache false');
    expect(lines).toContain('writers-svg.js.cache false');
    expect(lines.filter((line) => !line.endsWith(' false'))).toEqual([]);
  });

  test('loads neither the SVG library nor whole fonts with a pattern', () => {
    const pattern = readFileSync(join(bundles(dist), 'pattern.js'), 'latin1');
    expect(pattern).toContain('PrintScaling');
    expect(pattern).not.toContain('createSVGWindow');
    expect(readFileSync(join(bundles(dist), 'writers-svg.js'), 'latin1')).toContain('createElementNS');
    expect(pattern.length).toBeLessThan(800_000);
  });

  test('is a library that solves a job and builds its documents', () => {
    const script = `
      import { build } from ${JSON.stringify(join(dist, 'index.mjs'))};
      const made = await build('mat: {outer: 10 x 12}\\nunits: in\\nopenings: [{size: 6 x 8}]', { svg: true });
      console.log(made.files.map((file) => file.name + ' ' + String.fromCharCode(...file.bytes.slice(0, 4))).join());`;
    const file = join(folder, 'use.mjs');
    writeFileSync(file, script);
    // The packages that it imports are looked for from where it lies.
    symlinkSync(join(TOP, 'node_modules'), join(folder, 'node_modules'));
    const { stdout, stderr } = node([file]);
    expect(stderr).toBe('');
    expect(stdout.trim()).toBe('pattern-1.pdf %PDF,pattern-1.svg <svg');
  });
});
