import { spawn, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { measured } from './whole-process.ts';

export const about =
  'a day at once, by the program in dist: each document beside bare Node, patterns beside the general route, all documents, more and more jobs, nothing changed, save to pattern';
export const light = false;

const TOP = join(import.meta.dirname, '../..');
const TEMPLATES = join(TOP, 'templates');
const CLI = join(TOP, 'dist', 'cli.js');

/** `--jobs 200 --sizes 10,100,1000,5000 --unchanged 1000 --route 20`: fewer unless asked, since a machine may be busy. */
export async function run(args: readonly string[]): Promise<void> {
  if (!existsSync(CLI)) throw new Error('npm run build comes first');
  const asked = (name: string, usual: string): string => args[args.indexOf(`--${name}`) + 1 || args.length] ?? usual;
  const [jobs, route, unchanged] = ['jobs', 'route', 'unchanged'].map((name, i) =>
    Number(asked(name, ['40', '8', '100'][i]!)),
  );
  const top = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    documents(top);
    patterns(top, jobs!, route!);
    everything(top, jobs!);
    for (const size of asked('sizes', '10,40').split(',').map(Number)) growth(top, size);
    nothing(top, unchanged!);
    await saved(top);
  } finally {
    rmSync(top, { recursive: true });
  }
}

/** So many jobs of the templates, in turn; each with what is wished of it. */
function lay(folder: string, count: number, make: string): string {
  mkdirSync(folder);
  cpSync(join(TEMPLATES, 'shop.yaml'), join(folder, 'shop.yaml'));
  const names = readdirSync(TEMPLATES).filter((name) => name !== 'shop.yaml');
  for (let i = 0; i < count; i++) {
    const name = names[i % names.length]!;
    const text = readFileSync(join(TEMPLATES, name), 'utf8');
    writeFileSync(join(folder, `${i + 1}-${name}`), `${text}\nnumber: ${i + 1}\nmake: [${make}]\n`);
  }
  return folder;
}

const ALL = 'pattern, proof, ticket, cutfile';
/** What a busy machine slows down, and what it does not. */
const rate = (jobs: number, ms: number, cpuMs: number): string =>
  `${((1000 * jobs) / ms).toFixed(1).padStart(5)} jobs a second, ${(cpuMs / jobs).toFixed(0)} ms of a processor each`;
const say = (what: string, ...parts: readonly string[]): void =>
  console.log(`  ${what.padEnd(44)} ${parts.join(', ')}`);

/** One job, each document by itself, as often as its processor time comes out alike. */
function documents(top: string): void {
  // The plan of stock leaves a note beside the shop's file.
  const folder = join(top, 'alone');
  mkdirSync(folder);
  for (const name of ['shop.yaml', 'double.yaml']) cpSync(join(TEMPLATES, name), join(folder, name));
  const job = join(folder, 'double.yaml');
  const least = (args: readonly string[]): number => Math.min(...Array.from({ length: 5 }, () => measured(args).cpuMs));
  const bare = least(['-e', '0']);
  say('bare Node', `${bare.toFixed(0)} ms of a processor`);
  const calls: readonly (readonly string[])[] = [
    ['pattern'],
    ['pattern', '--svg'],
    ['proof'],
    ['ticket'],
    ['labels'],
    ['blanks'],
    ['intake'],
    ['placement'],
    ['stock'],
  ];
  for (const [command, ...flags] of calls) {
    const ms = least([CLI, command!, job, ...flags, '--quiet', '--out', join(top, 'one')]);
    say([command, ...flags].join(' '), `${ms.toFixed(0)} ms of a processor`, `${(ms / bare).toFixed(1)} × bare Node`);
  }
}

function patterns(top: string, jobs: number, route: number): void {
  const folder = lay(join(top, 'patterns'), jobs, 'pattern');
  const rates = [1, 2].map((threads) => {
    const { ms, cpuMs, mib } = measured([
      CLI,
      'make',
      folder,
      '--format',
      'pdf',
      '--quiet',
      '--force',
      '--threads',
      `${threads}`,
    ]);
    say(
      `patterns of ${jobs} jobs, ${threads === 1 ? 'one thread' : 'two threads'}`,
      rate(jobs, ms, cpuMs),
      `${mib.toFixed(0)} MiB`,
    );
    return (1000 * jobs) / ms;
  });
  const missing = ['rsvg-convert', 'pdfposter'].filter((name) => spawnSync(name, ['--version']).error !== undefined);
  if (missing.length > 0) {
    say('the general route', `skipped: there is no ${missing.join(' and no ')} here`);
    return;
  }
  measured([CLI, 'make', folder, '--format', 'svg', '--quiet', '--force']);
  const drawings = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /pattern-1\.svg$/u.test(name))
    .slice(0, route);
  const begun = performance.now();
  for (const name of drawings) {
    const [whole, pages] = [join(top, 'whole.pdf'), join(top, 'pages.pdf')];
    for (const [program, ...own] of [
      ['rsvg-convert', '-f', 'pdf', '-o', whole, join(folder, name)],
      ['pdfposter', '-m', 'letter', '-s', '1', whole, pages],
    ] as const) {
      const { status, stderr } = spawnSync(program, own, { encoding: 'utf8' });
      if (status !== 0) throw new Error(`${program} ended with ${status}\n${stderr}`);
    }
  }
  const general = (1000 * drawings.length) / (performance.now() - begun);
  const times = rates.map((each) => `${(each / general).toFixed(0)} ×`);
  say(
    `the general route, ${drawings.length} of the same`,
    `${general.toFixed(2)} jobs a second`,
    `ours ${times.join(' and ')} as many`,
  );
}

function everything(top: string, jobs: number): void {
  const folder = lay(join(top, 'all'), jobs, ALL);
  for (const out of ['out', undefined]) {
    const where = out === undefined ? [] : ['--out', join(top, out)];
    const { ms, cpuMs, mib } = measured([CLI, 'make', folder, ...where, '--quiet', '--threads', '2']);
    say(
      `all documents${out === undefined ? '' : ' and the day’s'} of ${jobs}, two threads`,
      rate(jobs, ms, cpuMs),
      `${mib.toFixed(0)} MiB`,
    );
  }
}

function growth(top: string, size: number): void {
  const folder = lay(join(top, `size-${size}`), size, ALL);
  const { ms, cpuMs, mib } = measured([
    CLI,
    'make',
    folder,
    '--out',
    join(top, `out-${size}`),
    '--quiet',
    '--threads',
    '2',
  ]);
  say(
    `a day of ${size}`,
    `${(ms / size).toFixed(0).padStart(5)} ms a job, ${(cpuMs / size).toFixed(0)} of a processor`,
    `${mib.toFixed(0)} MiB`,
  );
  for (const name of [folder, join(top, `out-${size}`)]) rmSync(name, { recursive: true });
}

function nothing(top: string, size: number): void {
  const folder = lay(join(top, 'same'), size, 'ticket');
  const call = [CLI, 'make', folder, '--out', join(top, 'same-out'), '--quiet'];
  measured(call);
  const { ms, mib } = measured(call);
  say(`nothing changed in ${size}`, `${ms.toFixed(0)} ms`, `${mib.toFixed(0)} MiB`);
}

/** From the moment of the save until the line that says what was made, ten times; the first warms it. */
async function saved(top: string): Promise<void> {
  const folder = lay(join(top, 'watched'), 2, ALL);
  const file = join(folder, readdirSync(folder).find((name) => name.startsWith('1-'))!);
  const child = spawn(process.execPath, [CLI, 'make', folder, '--watch'], { stdio: ['ignore', 'pipe', 'ignore'] });
  let heard: (text: string) => void = () => undefined;
  const line = (words: RegExp) =>
    new Promise<void>((resolve) => {
      heard = (text) => words.test(text) && resolve();
    });
  child.stdout.on('data', (chunk) => heard(String(chunk)));
  try {
    await line(/^watching/mu);
    const times: number[] = [];
    for (let i = 0; i < 10; i++) {
      const begun = performance.now();
      const told = line(/^1-.* ms/mu);
      appendFileSync(file, `# ${i}\n`);
      await told;
      times.push(performance.now() - begun);
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
    const sorted = times.slice(1).sort((a, b) => a - b);
    say(
      'from a save to everything of the job',
      `median ${sorted[4]!.toFixed(0)} ms`,
      `at most ${sorted.at(-1)!.toFixed(0)} ms`,
    );
  } finally {
    child.kill('SIGKILL');
  }
}
