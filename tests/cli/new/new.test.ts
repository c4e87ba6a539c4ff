import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileStem } from '../../../src/job/file-stem.ts';
import { fillTemplate } from '../../../src/job/from-template.ts';
import { run } from '../run.ts';

const TEMPLATES = ['double', 'float', 'single', 'triple'];

describe('new', () => {
  it('lists the templates with when to use them', async () => {
    const { out, code } = await run(['new', '--list']);
    expect(code).toBe(0);
    for (const name of TEMPLATES) expect(out).toMatch(new RegExp(`^${name} +\\S.*\\.$`, 'mu'));
  });

  for (const name of TEMPLATES) {
    it(`${name} is a whole job as it stands, and leaves nothing else there`, async () => {
      const ran = await run(['new', name, '--yes', '--out', '{}/mine.yaml']);
      expect([ran.code, ran.err]).toEqual([0, '']);
      expect(ran.made).toEqual(['mine.yaml']);
      expect(ran.out).toContain('next: matwright pattern {}/mine.yaml');
      expect(ran.out).toMatch(/united inches/u);
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
    const made = fillTemplate(readFileSync('templates/double.yaml', 'utf8'), { units: 'mm', artworks: ['270 x 340'] });
    const text = 'text' in made ? made.text : '';
    expect(text).toContain('reveal: 1/4 in');
    expect(text).toContain('outer: 16 x 20 in');
    expect(text).toContain('artwork: 270 x 340\n');
    expect(text).toContain('# Double mat');
  });

  it('names a file after the title, without its accents', () => {
    expect(['Möwe', 'Ã, été!', '***', 'Shop', 'Ебб'].map(fileStem)).toEqual(['mowe', 'a-ete', 'job', 'job', 'ебб']);
  });

  it('never writes over a file', async () => {
    const ran = await run(['new', 'single', '--yes', '--out', '{}/mine.yaml'], { 'mine.yaml': 'kept' });
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(
      'mine.yaml is there already; name another file with --out, or take that one away; nothing was written',
    );
    expect(ran.made).toEqual([]);
  });

  it('writes nothing that does not solve', async () => {
    const ran = await run(['new', 'single', '--yes', '--outer', '5 x 5', '--out', '{}/mine.yaml']);
    expect([ran.code, ran.made]).toEqual([2, []]);
    expect(ran.err).toContain('reaches beyond the mat');
    expect(ran.err).not.toMatch(/mine\.yaml/u);
  });

  it('takes from the shop beside it the unit and the head, and boards by their names', async () => {
    const shop = 'units: cm\nboards: {ash: {thickness: 1.4 mm}, oak: {thickness: 2 mm}}\nheads: {pull: {bevel: 45}}\n';
    const args = ['new', 'double', '--yes', '--json', '--out', '{}/mine.yaml', '--board', 'ash', '--board', 'oak'];
    const ran = await run([...args, '--border', '6'], { 'shop.yaml': shop });
    const made = JSON.parse(ran.out);
    expect(made.units).toBe('cm');
    expect(made.layers.map(({ board }: { board: string }) => board)).toEqual(['ash', 'oak']);
    expect(made.border.left).toBeCloseTo(60, 9);
  });

  const SHOP = 'boards: {ash: {thickness: 1.4 mm}}\n';
  /** What does not go together or has no place, and the words that say so. */
  const REFUSED: readonly (readonly [args: readonly string[], words: readonly string[]])[] = [
    [
      ['single', '--outer', '9 x 9', '--frame', '9 x 9'],
      ['--outer and --frame do not go together', 'give one of'],
    ],
    [['single', '--overlap', '1/4', '--float', '1/4'], ['--overlap and --float do not go together']],
    [
      ['single', '--reveal', '1/4'],
      ['--reveal has no place in the template single', 'there is one mat'],
    ],
    [
      ['grid-four', '--artwork', '5 x 7'],
      ['--artwork', 'once for 4 artworks (Ebb, Slack, Flood, High water)'],
    ],
    [
      ['own-outline', '--artwork', '5 x 7'],
      ['--artwork', 'its opening has a size and no artwork'],
    ],
    [
      ['own-outline', '--overlap', '5'],
      ['--overlap', 'no artwork'],
    ],
    [
      ['grid-four', '--openings', '3'],
      ['--openings', 'rows of a given number'],
    ],
    [
      ['diploma', '--openings', '3'],
      ['--openings', 'hang on its openings'],
    ],
    [['single', '--openings', '0'], ['--openings 0: give a whole number from 1']],
    [
      ['single', '--board', 'ash', '--board', 'ash'],
      ['--board', 'there are 2 boards for one layer'],
    ],
    [['single', '--board', 'ahs'], ['--board "ahs": there is no board ahs; did you mean ash?']],
    [
      ['single', '--head', 'pull'],
      ['--head "pull"', 'the shop has no heads'],
    ],
    [['single', '--units', 'inch'], ['--units "inch": inch is no unit here; write in, mm or cm']],
    [
      ['single', '--weighting', 'more'],
      ['--weighting "more"', 'none, diagonal'],
    ],
    [
      ['single', '--outer', '11by'],
      ['--outer "11by"', 'width x height'],
    ],
    [
      ['single', '--artwork', '120 x 170'],
      ['120 × 170 in is 3.0 × 4.3 m; did you mean mm?', '120 x 170 mm'],
    ],
    [['single', '--outer', '60 x 5'], ['--outer']],
    [['shop', '--units', 'mm'], ['--units belongs to a job, not to a shop']],
    [['shop', '--title', 'A', '--outer', '9 x 9'], ['--title, --outer belong to a job']],
  ];

  it.each(REFUSED)('refuses %j by name, and writes nothing', async (args, words) => {
    const ran = await run(['new', ...args, '--yes', '--out', '{}/mine.yaml'], { 'shop.yaml': SHOP });
    expect([ran.code, ran.made]).toEqual([2, []]);
    for (const each of words) expect(ran.err).toContain(each);
    expect(ran.err).not.toMatch(/mine\.yaml/u);
  });

  it('has as many openings as are asked for', async () => {
    const args = ['new', 'single', '--openings', '3', '--artwork', '4 x 6', '--artwork', '5 x 7', '--artwork', '4 x 6'];
    const ran = await run([...args, '--border', '2', '--yes', '--json', '--out', '{}/mine.yaml']);
    const { openings } = JSON.parse(ran.out);
    expect(openings.map(({ artwork }: { artwork: { size: { width: number } } }) => artwork.size.width / 25.4)).toEqual([
      expect.closeTo(4, 6),
      expect.closeTo(5, 6),
      expect.closeTo(4, 6),
    ]);
  });

  it('starts a shop', async () => {
    const ran = await run(['new', 'shop', '--out', '{}/shop.yaml']);
    expect([ran.code, ran.made]).toEqual([0, ['shop.yaml']]);
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
      ['In which unit', '\r'],
      ['How many openings', '\r'],
      ['Artwork, width x height (in', '9 y 12\r'],
      ['is not a size', '\x7f\x7f\x7f\x7fx 12\r'],
      ['Mat over the artwork', '\r'],
      ['What is known of the size', '\x1b[B\x1b[B\r'],
      ['Border (in)', '3\r'],
      ['More border at the bottom', '\r'],
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
