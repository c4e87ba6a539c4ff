import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { rounded } from '../../src/cli/rounded.ts';
import { run } from './run.ts';

const SHOP = `units: mm
boards: {bone: {thickness: 1.4}, slate: {thickness: 3.2}}
machines:
  laser: {kerf: 0.2, format: svg}
  knife: {offset: 0.25, thickest: 2, format: dxf}
`;
const one =
  'title: One\nunits: mm\nmat: {outer: 200 x 250, layers: [{board: bone}]}\nopenings: [{artwork: 120 x 160}]\n';
const two = 'title: Two\nunits: mm\nmat: {outer: 180 x 180, layers: [{board: slate}]}\nopenings: [{size: 90 x 90}]\n';

const SHEETS = ['intake.pdf', 'labels.pdf', 'manifest.json', 'pattern-1.pdf', 'pattern-1.svg'];
const REST = ['proof.pdf', 'proof.svg', 'ticket.pdf'];

interface Manifest {
  readonly title: string;
  readonly files: readonly string[];
  readonly pages: readonly { readonly file: string; readonly number: number; readonly paper: unknown }[];
  readonly cutfiles: readonly { readonly machine: string }[];
  readonly ticket: readonly { readonly number?: string }[];
  readonly warnings: readonly { readonly code: string; readonly file?: string }[];
}

describe('make', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'matwright-'));
    for (const [name, text] of Object.entries({ 'shop.yaml': SHOP, 'one.yaml': one, 'two.yaml': two }))
      await writeFile(join(folder, name), text);
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const at = (...names: string[]): string => join(folder, ...names);
  const made = async (...names: string[]): Promise<string[]> =>
    (await readdir(at(...names))).filter((name) => name !== '.matwright.json').sort();
  const manifest = async (name: string): Promise<Manifest> =>
    JSON.parse(await readFile(at('out', name, 'manifest.json'), 'utf8'));

  it('writes everything for every job, one folder each, the same as the single commands', async () => {
    const ran = await run(['make', at('one.yaml'), at('two.yaml'), '--out', at('out'), '--number', 'A-07']);
    expect(ran.code).toBe(0);
    expect(await made('out')).toEqual(['one', 'two']);
    // The knife cuts 2 mm at most, so the thick board has a file for the laser alone; nothing of it is to be placed.
    expect(await made('out', 'one')).toEqual([
      'blanks.pdf',
      'cut-knife-1.dxf',
      'cut-laser-1.svg',
      ...SHEETS,
      'placement.pdf',
      ...REST,
    ]);
    expect(await made('out', 'two')).toEqual(['blanks.pdf', 'cut-laser-1.svg', ...SHEETS, ...REST]);
    expect(ran.err).toContain('knife cuts 2 mm at most');
    expect(ran.out).toContain('One: 12 files in ');

    const [first, second] = [await manifest('one'), await manifest('two')];
    expect([...first.files, 'manifest.json'].sort()).toEqual(await made('out', 'one'));
    expect(first.cutfiles.map(({ machine }) => machine)).toEqual(['laser', 'knife']);
    expect([first.ticket[0]!.number, second.ticket[0]!.number]).toEqual(['A-07', 'A-08']);
    expect(second.warnings.map(({ code, file }) => [code, file])).toContainEqual(['machine-board-thick', 'two.yaml']);

    const pattern = await run(['pattern', at('one.yaml'), '--svg', '--out', at('single'), '--json']);
    const { pages } = JSON.parse(pattern.out) as Manifest;
    expect(rounded(first.pages.filter(({ file }) => file === 'pattern-1.pdf'))).toEqual(pages);
    expect(first.pages.some(({ file }) => file === 'placement.pdf')).toBe(true);
    await run(['cutfile', at('one.yaml'), '--machine', 'knife', '--out', at('single')]);
    await run(['proof', at('one.yaml'), '--svg', '--out', at('single')]);
    await run(['ticket', at('one.yaml'), '--number', 'A-07', '--out', at('single')]);
    for (const name of ['pattern-1.pdf', 'pattern-1.svg', 'cut-knife-1.dxf', 'proof.pdf', 'ticket.pdf'])
      expect([name, await readFile(at('out', 'one', name))]).toEqual([name, await readFile(at('single', name))]);
  });

  it('writes nothing for any where one is wrong, or a file cannot take its place', async () => {
    await writeFile(at('bad.yaml'), `${one}colour: red\n`);
    const wrong = await run(['make', at('one.yaml'), at('bad.yaml'), '--out', at('out')]);
    expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining('bad.yaml:5:1')]);
    expect(await made()).not.toContain('out');

    await mkdir(at('out', 'two', 'ticket.pdf'), { recursive: true });
    const barred = await run(['make', at('one.yaml'), at('two.yaml'), '--out', at('out')]);
    expect([barred.code, barred.err]).toEqual([2, expect.stringContaining('ticket.pdf is a folder')]);
    expect(await made('out')).toEqual(['two']);
    expect(await made('out', 'two')).toEqual(['ticket.pdf']);
  });

  it('tells jobs of one name apart by their folders, and refuses two that would share one', async () => {
    for (const name of ['terns', 'heron']) {
      await mkdir(at(name));
      await writeFile(at(name, 'job.yaml'), two);
    }
    const ran = await run(['make', at('terns/job.yaml'), at('heron/job.yaml'), '--out', at('out'), '--json']);
    const { jobs } = JSON.parse(ran.out) as { jobs: readonly (Manifest & { readonly folder: string })[] };
    expect(jobs.map((each) => each.folder)).toEqual([at('out', 'terns-job'), at('out', 'heron-job')]);
    const twice = await run(['make', at('two.yaml'), at('two.yaml'), '--out', at('out')]);
    expect([twice.code, twice.err]).toEqual([2, expect.stringContaining('would share a folder')]);
  });

  it('lies beside each job without --out', async () => {
    expect((await run(['make', at('two.yaml'), '--quiet'])).out).toBe('');
    expect(await made('two')).toContain('manifest.json');
  });
});
