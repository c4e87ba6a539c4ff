import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rounded } from '../../src/cli/rounded.ts';
import { bundles, TOP } from '../../src/dev/build.ts';
import { SELDOM } from '../../src/dev/bundle.ts';
import { type Built, build as buildInNode, type Result, solveJob } from '../../src/node.ts';
import { built } from '../built.ts';
import { forBrowser, inWorker } from './browser.ts';

const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
let dist = '';
let cli = '';

const node = (args: readonly string[]) => spawnSync(process.execPath, args, { cwd: TOP, encoding: 'utf8' });

/** A script that is loaded before the program. */
function requiring(name: string, script: string): readonly string[] {
  const file = join(folder, name);
  writeFileSync(file, script);
  return ['--require', file];
}

/** The files of the package that a command loads, by their paths from the program's own. */
function loadedBy(args: readonly string[]): readonly string[] {
  const tell = requiring(
    'tell.cjs',
    `process.on('exit', () => console.error(Object.keys(require.cache).map((file) => 'loaded ' + file).join('\\n')));`,
  );
  const { status, stderr } = node([...tell, cli, ...args]);
  expect(status, stderr).toBe(0);
  const inside = `loaded ${dist}/`;
  return stderr.split('\n').flatMap((line) => {
    return line.startsWith(inside) ? [relative(join(dist, 'cli'), line.slice('loaded '.length))] : [];
  });
}

const textOf = (names: readonly string[]): string =>
  names.map((name) => readFileSync(join(dist, 'cli', name), 'utf8')).join('\n');

describe('what the build makes', () => {
  beforeAll(async () => {
    dist = await built();
    cli = join(dist, 'cli.js');
  }, 180_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  test('has the same bytes each time, and no other programs', async () => {
    const made = await bundles(TOP);
    for (const [name, text] of Object.entries(made))
      expect(readFileSync(join(dist, name), 'utf8') === text, name).toBe(true);
    const there = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.(?:m?js|html)$/.test(name),
    );
    expect(there.sort()).toEqual(Object.keys(made).sort());
  }, 120_000);

  test('holds every prepared font once', () => {
    const holding = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((name) => {
      return /\.m?js$/.test(name) && readFileSync(join(dist, name), 'utf8').includes('rare-regular');
    });
    expect(holding).toEqual([join('fonts', 'full.js')]);
  });

  test('says nothing of where it was made', () => {
    for (const name of readdirSync(dist, { recursive: true, encoding: 'utf8' })) {
      if (statSync(join(dist, name)).isDirectory()) continue;
      expect(readFileSync(join(dist, name), 'utf8').includes(TOP), name).toBe(false);
    }
  });

  test('is a command that can be executed', () => {
    expect(readFileSync(cli, 'utf8').split('\n')[0]).toBe('#!/usr/bin/env node');
    expect(statSync(cli).mode & 0o111).toBe(0o111);
    const { status, stdout } = node([cli, '--help']);
    expect(stdout).toContain('matwright');
    expect(status).toBe(0);
  });

  test('says the same of a command by help and by its own option', () => {
    const { stdout } = node([cli, 'help', 'pattern']);
    expect(stdout).toBe(node([cli, 'pattern', '--help']).stdout);
    expect(stdout).toContain('--paper');
  });

  test('reads lengths in all the signs that the library reads', () => {
    const job =
      'units: in\nmat: {outer: 16 × 20, layers: [{board: {name: grey, thickness: 1⁄16 in}}, {board: {name: grey, thickness: 0.06″}, reveal: ½″}]}\nopenings: [{artwork: 10⅜" × 14-3/8 in, overlap: ¼″}]\n';
    const solved = solveJob(job, {});
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const file = join(folder, 'signs.yaml');
    writeFileSync(file, job);
    const { status, stdout } = node([cli, 'check', file, '--json']);
    expect(status, stdout).toBe(0);
    const [{ outer, openings }] = JSON.parse(stdout).jobs;
    expect({ outer, openings }).toEqual(
      JSON.parse(JSON.stringify(rounded({ outer: solved.value.report.outer, openings: solved.value.report.openings }))),
    );
  });

  test('lets Node keep compiled code where Node can', () => {
    const hook = requiring('keeps.cjs', `require('node:module').enableCompileCache = () => console.error('kept');`);
    expect(node([...hook, cli, '--version']).stderr).toContain('kept');
  });

  test('lets Node 20 optimise later, and says nothing of it to others', () => {
    const hook = requiring('later.cjs', `require('node:v8').setFlagsFromString = (flag) => console.error(flag);`);
    const said = node([...hook, cli, '--version']).stderr;
    expect(said).toBe(process.version.startsWith('v20.') ? '--interrupt-budget=900000\n' : '');
  });

  test('is a few files that are used together', () => {
    expect(loadedBy(['--version'])).not.toContain('solving.js');
    const check = loadedBy(['check', 'examples/heron/job.yaml']);
    expect(check).toContain('solving.js');
    expect(check).not.toContain('sheets.js');
    expect(check.length).toBeLessThan(7);
    expect(loadedBy(['pattern', 'examples/heron/job.yaml', '--out', join(folder, 'out')]).length).toBeLessThan(12);
  });

  test('reads what few jobs come to for these alone', () => {
    const seldom = Object.keys(SELDOM).map((name) => `${name}.js`);
    const ofThem = (args: readonly string[]) => loadedBy(args).filter((name) => seldom.includes(name));
    expect(ofThem(['check', 'examples/heron/job.yaml'])).toEqual([]);
    expect(ofThem(['pattern', 'examples/heron/job.yaml', '--out', join(folder, 'out')])).toEqual([]);
    expect(ofThem(['check', 'examples/heron/job.yaml', '--json'])).toEqual(['reasons.js']);
    expect(ofThem(['schema', 'job'])).toContain('json-schema.js');
    const ticket = loadedBy(['ticket', 'examples/heron/job.yaml', '--out', join(folder, 'out')]);
    expect(ticket).toContain('pages.js');
    for (const other of ['plans.js', 'sheets.js']) expect(ticket).not.toContain(other);
  });

  test('loads neither the SVG library nor rare fonts with a pattern, and of other commands nothing', () => {
    const pattern = loadedBy(['pattern', 'examples/heron/job.yaml', '--out', join(folder, 'out')]);
    expect(pattern).toContain('sheets.js');
    expect(pattern).not.toContain('proof.js');
    expect(textOf(pattern)).toContain('PrintScaling');
    expect(textOf(pattern)).not.toContain('createElementNS');
    expect(textOf(pattern)).not.toContain('rare-regular');
    expect(pattern).toContain('../fonts/files.js');
    for (const other of ['full', 'outlines']) expect(pattern).not.toContain(`../fonts/${other}.js`);
    for (const other of ['ticket.js', 'stock.js', 'jig.js', 'cutfile.js']) expect(pattern).not.toContain(other);
    expect(textOf(pattern)).not.toContain('Bench ticket');
    const svg = loadedBy(['pattern', 'examples/heron/job.yaml', '--svg', '--out', join(folder, 'out')]);
    expect(textOf(svg)).toContain('createElementNS');
  });

  test('is a library that solves a job and builds its documents', () => {
    const made = (entry: string, options: string): string => {
      const script = `
        import { build } from ${JSON.stringify(join(dist, entry))};
        const made = await build('mat: {outer: 10 x 12}\\nunits: in\\nopenings: [{size: 6 x 8}]', ${options});
        console.log(made.value.files.map((file) => file.name + ' ' + String.fromCharCode(...file.bytes.slice(0, 4))).join());`;
      const file = join(folder, 'use.mjs');
      writeFileSync(file, script);
      const { stdout, stderr } = node([file]);
      expect(stderr).toBe('');
      return stdout.trim();
    };
    expect(made('node.mjs', "{ format: ['pdf', 'svg'] }")).toBe('pattern-1.pdf %PDF,pattern-1.svg <svg');
    expect(made('index.mjs', '{}')).toBe('pattern-1.pdf %PDF');
  });

  test('is a library for workers in browsers, whose SVG is that of Node', async () => {
    const source = { contents: "export { build } from './worker.mjs';", resolveDir: dist };
    const { text, meta } = await forBrowser(source);
    const used = Object.keys(meta.inputs).filter((file) =>
      /node_modules\/(?:svgdom|fontkit|image-size|sax)\//.test(file),
    );
    expect(used).toEqual([]);
    const job = 'title: Heron <&>\nunits: in\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]';
    const made = (await inWorker(text, "matwright.build(given.job, { format: ['pdf', 'svg'] })", {
      job,
    })) as Result<Built>;
    const there = await buildInNode(job, { format: ['pdf', 'svg'] });
    if (!made.ok || !there.ok) throw new Error(JSON.stringify([made, there]));
    expect(made.value.files.map(({ name }) => name)).toEqual(['pattern-1.pdf', 'pattern-1.svg']);
    for (const [i, { name, bytes }] of there.value.files.entries())
      expect(Buffer.from(made.value.files[i]!.bytes).equals(bytes), name).toBe(true);
  });
});
