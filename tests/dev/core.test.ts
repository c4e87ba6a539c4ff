import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { type Built, type Result, solveJob } from '../../src/index.ts';
import { forBrowser, inWorker } from './browser.ts';

const TOP = join(import.meta.dirname, '../..');

const JOBS: Readonly<Record<string, string>> = {
  plain: 'title: Plain\nunits: in\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n',
  lettered: readFileSync(join(TOP, 'templates/lettered.yaml'), 'utf8'),
  rare: 'title: "Ḁnother ☃"\nunits: mm\nmat: {outer: 200 x 260}\nopenings: [{size: 120 x 180}]\n',
};

describe('the core in a browser', () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  let script = '';

  beforeAll(async () => {
    script = (await forBrowser({ contents: "export * from './index.ts';", resolveDir: join(TOP, 'src'), loader: 'ts' }))
      .text;
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test.each(Object.entries(JOBS))('makes of a %s job the bytes that the command line makes', async (name, text) => {
    const job = join(folder, `${name}.yaml`);
    writeFileSync(job, text);
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const code = await main(['pattern', job, '--out', join(folder, name)], '0');
    vi.restoreAllMocks();
    expect(code).toBe(0);

    const made = (await inWorker(script, 'matwright.build(given.text, { file: given.file })', {
      text,
      file: job,
    })) as Result<Built>;
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { files } = made.value;
    const names = files.map((file) => file.name);
    expect(names).toEqual(
      readdirSync(join(folder, name))
        .filter((file) => file.endsWith('.pdf'))
        .sort(),
    );
    for (const file of files)
      expect(Buffer.from(file.bytes).equals(readFileSync(join(folder, name, file.name))), file.name).toBe(true);
  });
});

/** Bytes of minified code that solving and checking may take on their own. */
const MOST = 400_000;

test('what solves and checks is small, and holds no outlines, no PDF and no rare fonts', async () => {
  const { text, meta } = await forBrowser({
    contents: "export { readShop, solveJob } from './index.ts';",
    resolveDir: join(TOP, 'src'),
    loader: 'ts',
  });
  const inside = Object.entries(Object.values(meta.outputs)[0]!.inputs)
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .map(([file]) => file);
  const unwanted = /fonts\/prepared\/|fonts\/rare|writers\/|node_modules\/(?!zod\/|yaml\/)/;
  expect(inside.filter((file) => unwanted.test(file))).toEqual([]);
  expect(inside.some((file) => file.endsWith('mat/solve.ts'))).toBe(true);
  process.stdout.write(`what solves and checks: ${text.length} bytes minified\n`);
  expect(text.length).toBeLessThanOrEqual(MOST);
  const solved = await inWorker(text, 'matwright.solveJob(given.text).value.report.outer', { text: JOBS.plain });
  const here = solveJob(JOBS.plain!);
  expect(solved).toEqual(here.ok && here.value.report.outer);
});
