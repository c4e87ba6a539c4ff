import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fillTemplate } from '../../src/job/from-template.ts';
import { run } from './run.ts';

const TEMPLATES = ['double', 'float', 'single', 'triple'];

describe('new', () => {
  it('lists the templates with when to use them', async () => {
    const { out, code } = await run(['new', '--list']);
    expect(code).toBe(0);
    for (const name of TEMPLATES) expect(out).toMatch(new RegExp(`^${name} +\\S.*\\.$`, 'mu'));
  });

  for (const name of TEMPLATES) {
    it(`${name} is a whole job as it stands, and names its schema`, async () => {
      const ran = await run(['new', name, '--yes', '--out', '{}/mine.yaml']);
      expect([ran.code, ran.err]).toEqual([0, '']);
      expect(ran.made).toEqual(['job.schema.json', 'mine.yaml']);
      expect(ran.out).toContain('next: matwright pattern {}/mine.yaml');
      expect(ran.out).toMatch(/united inches/u);
      expect(readFileSync(`templates/${name}.yaml`, 'utf8')).toMatch(
        /^# yaml-language-server: \$schema=job\.schema\.json\n# /u,
      );
    });
  }

  it('takes what options say and gives the sizes in mm', async () => {
    const args = [
      'new',
      'double',
      '--title',
      'Curlew',
      '--artwork',
      '9 x 12',
      '--border',
      '3',
      '--json',
      '--out',
      '{}/a.yaml',
    ];
    const ran = await run(args);
    expect(JSON.parse(ran.out)).toMatchObject({
      title: 'Curlew',
      outer: { width: expect.closeTo(15 * 25.4, 9), height: expect.closeTo(18.5 * 25.4, 9) },
    });
  });

  it('keeps the template its inches where the job counts in mm', () => {
    const text = fillTemplate(readFileSync('templates/double.yaml', 'utf8'), { units: 'mm', artwork: '270 x 340' });
    expect(text).toContain('reveal: 1/4 in');
    expect(text).toContain('outer: 16 x 20 in');
    expect(text).toContain('artwork: 270 x 340\n');
    expect(text).toContain('# Double mat');
  });

  it('never writes over a file', async () => {
    const ran = await run(['new', 'single', '--yes', '--out', '{}/mine.yaml'], { 'mine.yaml': 'kept' });
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('mine.yaml is there already; nothing was changed');
    expect(ran.made).toEqual([]);
  });

  it('leaves a schema that is there as it is', async () => {
    const ran = await run(['new', 'single', '--yes', '--out', '{}/mine.yaml'], { 'job.schema.json': 'own' });
    expect([ran.code, ran.made]).toEqual([0, ['mine.yaml']]);
  });

  it('writes nothing that does not solve', async () => {
    const ran = await run(['new', 'single', '--yes', '--outer', '5 x 5', '--out', '{}/mine.yaml']);
    expect([ran.code, ran.made]).toEqual([2, []]);
    expect(ran.err).toContain('reaches beyond the mat');
  });

  it('starts a shop', async () => {
    const ran = await run(['new', 'shop', '--out', '{}/shop.yaml']);
    expect([ran.code, ran.made]).toEqual([0, ['shop.schema.json', 'shop.yaml']]);
  });

  it('names the nearest template', async () => {
    const ran = await run(['new', 'tripel', '--yes']);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('did you mean triple?');
  });

  /** `script` of util-linux makes a terminal; without it this is skipped. */
  const terminal = spawnSync('script', ['--version']).status === 0;
  it.skipIf(!terminal)('asks a few questions at a terminal (wants the program script)', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
    const program = `import { main } from '${process.cwd()}/src/cli/main.ts'; main(process.argv.slice(1), 'test').then((code) => { process.exitCode = code; });`;
    const command = `stty cols 120 rows 40; node --import tsx --input-type=module -e "${program}" -- new single --out ${folder}/asked.yaml`;
    const child = spawn('script', ['-qec', command, '/dev/null'], { stdio: ['pipe', 'pipe', 'pipe'] });
    const answers = [
      ['What is the piece called?', 'Avocet\r'],
      ['Artwork', '9 x 12\r'],
      ['Outer size', '\r'],
      ['Border', '3\r'],
      ['Overlap', '\r'],
    ];
    let screen = '';
    child.stdout.on('data', (chunk) => {
      screen += String(chunk);
      const [question, answer] = answers[0] ?? [];
      if (question !== undefined && screen.includes(question)) {
        answers.shift();
        screen = '';
        setTimeout(() => child.stdin.write(answer!), 150);
      }
    });
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect([code, answers]).toEqual([0, []]);
    expect(screen).toContain('next: matwright pattern');
    const text = readFileSync(`${folder}/asked.yaml`, 'utf8');
    expect(text).toContain('title: Avocet');
    expect(text).toContain('artwork: 9 x 12');
    expect(text).toMatch(/^ {2}border: 3$/mu);
    rmSync(folder, { recursive: true });
  });
});
