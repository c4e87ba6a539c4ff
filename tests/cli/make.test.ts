import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { rounded } from '../../src/cli/rounded.ts';
import { ONE, SHOP, TWO, twoJobs } from './day/two-jobs.ts';
import { run } from './run.ts';

const USUAL = ['face.svg', 'manifest.json', 'pattern-1.pdf', 'pattern-1.svg', 'proof.pdf', 'proof.svg', 'ticket.pdf'];
const DAY = ['index.html', 'labels.pdf', 'manifest.json', 'patterns.pdf', 'stock.pdf', 'tickets.pdf'];

interface Manifest {
  readonly title: string;
  readonly files: readonly string[];
  readonly pages: readonly { readonly file: string; readonly number: number; readonly paper: unknown }[];
  readonly cutfiles: readonly { readonly machine: string }[];
  readonly ticket: readonly { readonly number?: string }[];
  readonly warnings: readonly { readonly code: string; readonly file?: string }[];
}

const { at, made, out } = twoJobs();
const manifest = async (name: string): Promise<Manifest> =>
  JSON.parse(await readFile(at('out', name, 'manifest.json'), 'utf8'));

describe('make', () => {
  it('writes what is usual for every job, one folder each, the same as the single commands', async () => {
    const ran = await run(['make', at('one.yaml'), at('two.yaml'), '--out', at('out'), '--number', 'A-07']);
    expect([ran.code, await made('out')]).toEqual([
      0,
      ['index.html', 'labels.pdf', 'manifest.json', 'one', ...DAY.slice(3), 'two'],
    ]);
    // The knife cuts 2 mm at most, so the thick board has a file for the laser alone.
    expect(await made('out', 'one')).toEqual(['cut-knife-1.dxf', 'cut-laser-1.svg', ...USUAL]);
    expect(await made('out', 'two')).toEqual(['cut-laser-1.svg', ...USUAL]);
    expect(ran.err).toContain('knife cuts 2 mm at most');
    expect(ran.out).toContain('One: 9 files in ');

    const [first, second] = [await manifest('one'), await manifest('two')];
    expect([...first.files, 'manifest.json'].sort()).toEqual(await made('out', 'one'));
    expect(first.cutfiles.map(({ machine }) => machine)).toEqual(['laser', 'knife']);
    expect([first.ticket[0]!.number, second.ticket[0]!.number]).toEqual(['A-07', 'A-08']);
    expect(second.warnings.map(({ code, file }) => [code, file])).toContainEqual(['machine-board-thick', 'two.yaml']);

    await mkdir(at('numbered'));
    await writeFile(at('numbered', 'one.yaml'), `${ONE}number: A-07\n`);
    const single = (command: string, ...more: readonly string[]) =>
      run([command, at('numbered', 'one.yaml'), '--out', at('single'), ...more]);
    const pattern = await single('pattern', '--svg', '--json');
    const { pages } = JSON.parse(pattern.out) as Manifest;
    expect(rounded(first.pages.filter(({ file }) => file === 'pattern-1.pdf'))).toEqual(pages);
    await single('cutfile', '--machine', 'knife');
    await single('proof', '--svg');
    await single('ticket');
    for (const name of ['pattern-1.pdf', 'pattern-1.svg', 'cut-knife-1.dxf', 'proof.pdf', 'ticket.pdf'])
      expect([name, await readFile(at('out', 'one', name))]).toEqual([name, await readFile(at('single', name))]);
  });

  it('makes what the job says, else what its shop says', async () => {
    await writeFile(at('shop.yaml'), `${SHOP}make: [ticket, labels]\n`);
    await writeFile(at('two.yaml'), `${TWO}make: [placement, intake, blanks, proof]\n`);
    expect((await out()).code).toBe(0);
    expect(await made('out', 'one')).toEqual(['labels.pdf', 'manifest.json', 'ticket.pdf']);
    // Nothing of it is to be placed.
    expect(await made('out', 'two')).toEqual([
      'blanks.pdf',
      'face.svg',
      'intake.pdf',
      'manifest.json',
      'proof.pdf',
      'proof.svg',
    ]);
    expect(await made('out')).not.toContain('patterns.pdf');
    await writeFile(at('two.yaml'), `${TWO}make: [prof]\n`);
    const wrong = await out();
    expect([wrong.code, wrong.err]).toEqual([
      2,
      expect.stringMatching(/two\.yaml:5:8 {2}make\[0\] .*did you mean proof/u),
    ]);
  });

  it('joins what is for all jobs, page by page the same, called by the job', async () => {
    expect((await out('--number', '41')).code).toBe(0);
    const day = await PDFDocument.load(await readFile(at('out', 'patterns.pdf')));
    const [first, second] = await Promise.all(
      ['one', 'two'].map(async (name) => PDFDocument.load(await readFile(at('out', name, 'pattern-1.pdf')))),
    );
    const sizes = (document: PDFDocument) => document.getPages().map((page) => page.getSize());
    expect(sizes(day)).toEqual([...sizes(first!), ...sizes(second!)]);
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const read = await getDocument({ data: new Uint8Array(await readFile(at('out', 'patterns.pdf'))) }).promise;
    const labels = (await read.getPageLabels()) ?? [];
    expect(new Set(labels).size).toBe(labels.length);
    expect(labels.filter((label) => /^4[12] /u.test(label))).toHaveLength(labels.length);
    expect((await read.getOutline()).map(({ title }) => title)).toEqual(['41 One', '42 Two']);
    await read.destroy();
    const list = JSON.parse(await readFile(at('out', 'manifest.json'), 'utf8'));
    expect(list.papers.map((paper: { file: string; pages: number }) => [paper.file, paper.pages > 0])).toEqual(
      ['patterns.pdf', 'tickets.pdf', 'labels.pdf', 'stock.pdf'].map((name) => [name, true]),
    );
    expect(list.papers[0]).toMatchObject({ pages: day.getPageCount(), jobs: ['one', 'two'] });
    expect(list.jobs[0]).toMatchObject({ folder: 'one', title: 'One', number: '41', source: { job: '../one.yaml' } });
  });

  it('makes the others where one is wrong, and tells it last with its place', async () => {
    await writeFile(at('bad.yaml'), `${ONE}colour: red\n`);
    await mkdir(at('gone.yaml'));
    const named = ['bad.yaml', 'one.yaml', 'gone.yaml', 'missing.yaml', 'two.yaml'].map((name) => at(name));
    await rm(at('gone.yaml'), { recursive: true });
    const ran = await run(['make', ...named, '--out', at('out'), '--number', '1']);
    expect(ran.code).toBe(2);
    expect(ran.err.trimEnd().split('\n').slice(-3)).toEqual([
      expect.stringContaining('gone.yaml  there is no such job'),
      expect.stringContaining('missing.yaml  there is no such job'),
      expect.stringContaining('bad.yaml:5:1  colour'),
    ]);
    expect(await made('out', 'one')).toContain('ticket.pdf');
    // The wrong ones keep their numbers.
    expect((await manifest('two')).ticket[0]!.number).toBe('5');
    const page = await readFile(at('out', 'index.html'), 'utf8');
    expect(page).toContain('bad.yaml:5:1  colour');
    const json = JSON.parse((await run(['make', ...named, '--out', at('out'), '--json'])).out);
    expect(json.jobs.map(({ title }: Manifest) => title)).toEqual(['One', 'Two']);
    expect(json.problems.map(({ code }: { code: string }) => code)).toEqual([
      'job-unreadable',
      'job-unreadable',
      'key-unknown',
    ]);
  });

  it('writes nothing for any with --all-or-none', async () => {
    await writeFile(at('bad.yaml'), `${ONE}colour: red\n`);
    const wrong = await out('--all-or-none');
    expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining('bad.yaml:5:1')]);
    expect(await made()).not.toContain('out');
    await rm(at('bad.yaml'));
    await mkdir(at('out', 'two', 'ticket.pdf'), { recursive: true });
    const barred = await out('--all-or-none');
    expect([barred.code, barred.err]).toEqual([2, expect.stringContaining('ticket.pdf is a folder')]);
    expect(await made('out')).toEqual(['two']);
    await rm(at('out'), { recursive: true });
    expect((await out('--all-or-none')).code).toBe(0);
    const held = await readFile(at('out', 'index.html'));
    await rm(at('out'), { recursive: true });
    await out();
    expect(await readFile(at('out', 'index.html'))).toEqual(held);
  });

  it('tells of a folder that cannot be written, and makes the others', async () => {
    await mkdir(at('out', 'two', 'ticket.pdf'), { recursive: true });
    const barred = await out();
    expect([barred.code, barred.err]).toEqual([2, expect.stringContaining('two.yaml  ')]);
    expect(barred.err).toContain('ticket.pdf is a folder');
    expect(await made('out', 'one')).toContain('ticket.pdf');
    expect(await made('out', 'two')).toEqual(['ticket.pdf']);
  });

  it('bounds the pages of a job', async () => {
    const ran = await out('--max-sheets', '3');
    const json = JSON.parse((await out('--max-sheets', '3', '--json')).out);
    expect(json.problems[0]).toMatchObject({ code: 'sheets-many' });
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('sheets, more than the 3 that one job may take')]);
    expect((await out('--max-sheets', 'many')).err).toContain('--max-sheets many: give a whole number from 1 to 500');
  });

  it('tells jobs of one name apart by their folders, and refuses two that would share one', async () => {
    for (const name of ['terns', 'heron']) {
      await mkdir(at(name));
      await writeFile(at(name, 'job.yaml'), TWO);
    }
    const ran = await run(['make', at('terns/job.yaml'), at('heron/job.yaml'), '--out', at('out'), '--json']);
    const { jobs } = JSON.parse(ran.out) as { jobs: readonly (Manifest & { readonly folder: string })[] };
    expect(jobs.map((each) => each.folder)).toEqual([at('out', 'terns-job'), at('out', 'heron-job')]);
    await writeFile(at('two-out.yaml'), TWO);
    await writeFile(at('two'), TWO);
    const twice = await run(['make', at('two'), at('two-out.yaml')]);
    expect([twice.code, twice.err]).toEqual([2, expect.stringContaining('would share a folder')]);
  });

  it('lies beside each job without --out, and makes nothing for all together', async () => {
    expect((await run(['make', at('two.yaml'), '--quiet'])).out).toBe('');
    expect(await made('two')).toContain('manifest.json');
    expect(await made()).toEqual(['one.yaml', 'shop.yaml', 'two', 'two.yaml']);
  });

  it('makes the rows of a table', async () => {
    await writeFile(
      at('prints.csv'),
      'title,artwork,count\nHeron,110 x 150,2\n"Terns, low",120 x 170,\nWide,900 x 10,\n',
    );
    const ran = await run(['make', '--table', at('prints.csv'), '--template', at('one.yaml'), '--out', at('out')]);
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining(`${at('prints.csv')}:4:2  openings[0].artwork`)]);
    expect(await made('out')).toEqual([
      'heron',
      'index.html',
      'labels.pdf',
      'manifest.json',
      'patterns.pdf',
      'stock.pdf',
      'terns-low',
      'tickets.pdf',
    ]);
    const alone = await run(['make', '--table', at('prints.csv'), '--out', at('out')]);
    expect([alone.code, alone.err]).toEqual([2, expect.stringContaining('--table and --template go together')]);
    expect((await run(['make'])).err).toContain('name jobs, or a table');
  });
});
