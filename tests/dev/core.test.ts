import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { forBrowser, inWorker } from './browser.ts';

const TOP = join(import.meta.dirname, '../..');

const JOBS: Readonly<Record<string, string>> = {
  plain: 'title: Plain\nunits: in\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n',
  lettered: readFileSync(join(TOP, 'templates/lettered.yaml'), 'utf8'),
  rare: 'title: "Ḁnother ☃"\nunits: mm\nmat: {outer: 200 x 260}\nopenings: [{size: 120 x 180}]\n',
};

interface Made {
  readonly problems?: unknown;
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

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

    const made = (await inWorker(script, 'matwright.build(given.text, given)', { text, file: job })) as Made;
    expect(made.problems).toBeUndefined();
    const names = made.files.map((file) => file.name);
    expect(names).toEqual(
      readdirSync(join(folder, name))
        .filter((file) => file.endsWith('.pdf'))
        .sort(),
    );
    for (const file of made.files)
      expect(Buffer.from(file.bytes).equals(readFileSync(join(folder, name, file.name))), file.name).toBe(true);
  });
});
