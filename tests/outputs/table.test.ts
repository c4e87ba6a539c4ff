import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import {
  build,
  everything,
  make,
  OPTIONS,
  OUTPUTS,
  type Output,
  type OutputFile,
  type OutputOptions,
  type Solved,
  type Step,
  type Surroundings,
  solveJob,
} from '../../src/index.ts';
import { run } from '../cli/run.ts';
import '../../src/node.ts';

const SHOP = {
  file: 'shop.yaml',
  text: 'units: mm\nmachines: {laser: {kind: laser, kerf: 0.2}}\nheads: {pull: {bevel: 45, opening: left}}\n',
};
const JOB = 'title: Heron\nunits: mm\nmat: {outer: 160 x 230}\nopenings: [{artwork: 100 x 150, overlap: 5}]\n';

const RENDERER = createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm');
const AROUND: Surroundings = { renderer: async () => new Uint8Array(readFileSync(RENDERER)) };

function solved(text = JOB): Solved {
  const made = solveJob(text, { shop: SHOP });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** What an output needs to be made at all. */
const usual = ({ id }: Output): OutputOptions =>
  id === 'jig' ? { kind: 'guide' } : id === 'stock' ? { effort: 0 } : {};

async function filesOf(output: Output, options: OutputOptions = {}, around = AROUND): Promise<readonly OutputFile[]> {
  const made = await make(output.id, { jobs: [solved()], shop: SHOP }, { ...usual(output), ...options }, around);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.files;
}

/** How a file of each format begins. */
const BEGINNINGS: Readonly<Record<string, RegExp>> = {
  pdf: /^%PDF-1\.7/,
  svg: /^<svg /,
  tiles: /^<svg /,
  png: /^\u0089PNG/,
  dxf: /^(?:999|\s*0)\r?\n/,
  hpgl: /^(?:IN|CO)/,
};
const start = ({ bytes }: OutputFile): string => String.fromCharCode(...bytes.slice(0, 40));

describe('every row of the table', () => {
  it.each(OUTPUTS)('$id is written in each of its formats, by names that tell them apart', async (output) => {
    const documents = output.use !== undefined;
    if (documents) expect(output.formats.slice(0, 3)).toEqual(['pdf', 'svg', 'png']);
    const names: string[] = [];
    for (const format of output.formats) {
      const files = await filesOf(output, { format: [format], dpi: 20 });
      expect(files.length).toBeGreaterThan(0);
      for (const file of files) {
        // A plotter's file has a drawing of the bed beside it.
        const beside = format === 'hpgl' && file.name.endsWith('-bed.svg');
        const begins = BEGINNINGS[beside ? 'svg' : format]!;
        expect([file.name, start(file)]).toEqual([file.name, expect.stringMatching(begins)]);
      }
      names.push(...files.map(({ name }) => name));
    }
    expect(new Set(names).size).toBe(names.length);
    const all = await filesOf(output, { format: output.formats, dpi: 20 });
    expect(all.map(({ name }) => name).sort()).toEqual(names.sort());
  });

  /** What a command does besides. */
  const OWN: Readonly<Record<string, readonly string[]>> = { jig: ['list'], stock: ['cut', 'undo'] };

  it.each(OUTPUTS)('$id names every option of its command, and no other', async ({ id, options, examples }) => {
    const help = (await run([id, '--help'])).out;
    const listed = [...help.matchAll(/^ {2}--([a-z-]+)/gmu)].map(([, name]) => name);
    const shared = ['out', 'shop', 'json', 'quiet', 'prune', ...(OWN[id] ?? [])];
    expect(listed.filter((name) => !shared.includes(name!)).sort()).toEqual([...options].sort());
    for (const example of examples) expect(help).toContain(`  matwright ${example}\n`);
    expect(examples.every((example) => example.split(' ')[0] === id)).toBe(true);
  });

  it('is in the list of commands, with its summary', async () => {
    const help = (await run(['--help'])).out.replaceAll(/\s+/gu, ' ');
    for (const { id, summary } of OUTPUTS) expect(help).toMatch(new RegExp(`\\b${id} .*${summary.slice(0, 30)}`));
  });

  it('is asked for nothing that is no option, and there is no option that none has', () => {
    const used = new Set(OUTPUTS.flatMap(({ options }) => options));
    expect([...used].sort()).toEqual(Object.keys(OPTIONS).sort());
  });
});

describe('the same bytes', () => {
  it('whether an output is made alone, with others, or with everything of the job', async () => {
    const ids = OUTPUTS.filter(({ ofEveryJob }) => ofEveryJob !== undefined).map(({ id }) => id);
    const all = await everything(solved(`${JOB}make: [${ids.join(', ')}]\n`), 0, {}, AROUND);
    const documents = ['pattern', 'proof', 'ticket', 'intake', 'placement', 'blanks', 'labels'] as const;
    const together = await build(JOB, { shop: SHOP, documents: [...documents, 'cutfile'], format: ['pdf', 'svg'] });
    if (!all.ok || !together.ok) throw new Error(JSON.stringify([all, together]));
    const whole = new Map(all.value.files.map(({ name, bytes }) => [name, bytes]));
    const built = new Map(together.value.files.map(({ name, bytes }) => [name, bytes]));
    for (const output of OUTPUTS.filter(({ ofEveryJob }) => ofEveryJob !== undefined)) {
      for (const { name, bytes } of await filesOf(output)) {
        expect([name, whole.get(name)]).toEqual([name, bytes]);
        expect([name, built.get(name)]).toEqual([name, bytes]);
      }
    }
    expect(all.value.manifest.files).toEqual(all.value.files.slice(0, -1).map(({ name }) => name));
  });
});

describe('the options', () => {
  it('are named where they speak of a format that is not made', async () => {
    const made = await make('proof', { jobs: [solved()] }, { dpi: 40 }, AROUND);
    expect(made.ok && made.warnings.map(({ code, path }) => [code, path])).toContainEqual([
      'option-idle',
      ['options', 'dpi'],
    ]);
  });
});

describe('the work', () => {
  const pattern = OUTPUTS.find(({ id }) => id === 'pattern')!;

  it('tells each file that it has written, of how many', async () => {
    const steps: Step[] = [];
    const files = await filesOf(pattern, { format: ['pdf', 'svg', 'tiles'] }, { progress: (step) => steps.push(step) });
    expect(steps).toEqual(
      files.map(({ name }, i) => ({ output: 'pattern', file: name, done: i + 1, of: files.length })),
    );
  });

  it('stops between two files where it is asked to', async () => {
    const signal = { aborted: false };
    const written: string[] = [];
    const progress = ({ file }: Step) => {
      written.push(file);
      signal.aborted = true;
    };
    const made = await make('pattern', { jobs: [solved()] }, { format: ['pdf', 'svg'] }, { signal, progress });
    expect([made.ok ? [] : made.problems.map(({ code }) => code), written]).toEqual([['cancelled'], ['pattern-1.pdf']]);
    const all = await everything(solved(), 0, {}, { signal: { aborted: true } });
    expect(all.ok ? [] : all.problems.map(({ code }) => code)).toEqual(['cancelled']);
  });

  it('tells how far planning stock is, and stops it', async () => {
    const steps: Step[] = [];
    const signal = { aborted: false };
    const progress = (step: Step) => {
      steps.push(step);
      signal.aborted = steps.length === 2;
    };
    expect((await make('stock', { jobs: [solved()] }, { effort: 0 }, { progress })).ok).toBe(true);
    expect(steps[0]).toEqual({ output: 'stock', file: expect.stringMatching(/^planning /), done: 0, of: 100 });
    steps.splice(0, steps.length, steps[0]!);
    signal.aborted = false;
    const made = await make('stock', { jobs: [solved()] }, {}, { signal, progress });
    expect(made.ok ? [] : made.problems.map(({ code }) => code)).toEqual(['cancelled']);
    expect(steps.length).toBe(2);
  });
});
