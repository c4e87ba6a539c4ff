import { describe, expect, it } from 'vitest';
import { commandLines } from '../../src/dev/guide/command-line.ts';
import { filled } from '../../src/dev/guide/fill.ts';
import type { Terminal } from '../../src/dev/guide/terminal.ts';

/** Says the block that it was given, and fails where it has the word. */
function terminal(): Terminal & { readonly files: Map<string, string> } {
  const files = new Map<string, string>();
  return {
    files,
    run: async (block) => ({ code: block.includes('wrong') ? 2 : 0, text: `said: ${block}` }),
    write: async (file, text) => {
      files.set(file, text);
    },
    read: async (file) => Buffer.from(files.get(file) ?? ''),
    names: async () => new Set(files.keys()),
    close: async () => undefined,
  };
}

const fill = (text: string, at = terminal()) =>
  filled('page.md', text, { terminal: at, number: (name) => `<${name}>`, table: (name) => `| ${name} |` });

describe('a page of the guide', () => {
  it('gets what its commands say in place of what stood there', async () => {
    const page = '```sh\nnpx matwright check a\n```\n<!-- said -->\n```text\nold\n```\n<!-- end -->\n\nrest\n';
    const made = await fill(page);
    expect(made).toBe(page.replace('old', 'said: npx matwright check a'));
    expect(await fill(made)).toBe(made);
  });

  it('gets files, tables and numbers, and writes what its reader writes', async () => {
    const at = terminal();
    const made = await fill(
      '<!-- write: a.yaml -->\n```yaml\nunits: mm\ntitle: A\n```\n\n<!-- file: a.yaml, from title -->\n<!-- end -->\n\n<!-- table: T -->\n<!-- end -->\n\nIt is <!-- number: n -->1<!-- end --> wide.\n',
      at,
    );
    expect(at.files.get('a.yaml')).toBe('units: mm\ntitle: A\n');
    expect(made).toContain('<!-- file: a.yaml, from title -->\n```yaml\ntitle: A\n```\n<!-- end -->');
    expect(made).toContain('<!-- table: T -->\n| T |\n<!-- end -->');
    expect(made).toContain('It is <!-- number: n --><n><!-- end --> wide.');
  });

  it('books the plan that was told last', async () => {
    const told = '```sh\nplan 1234-5678\n```\n';
    const at = { ...terminal(), run: async (text: string) => ({ code: 0, text }) };
    expect(await fill(`${told}\n\`\`\`sh\nstock --cut 0000-0000\n\`\`\`\n`, at)).toContain('stock --cut 1234-5678\n');
  });

  it('is refused where a command fails, or does not fail where it is to', async () => {
    await expect(fill('```sh\nnpx matwright wrong\n```\n')).rejects.toThrow(/page.md: this ends with 2 instead of 0/);
    await expect(fill('```sh\nnpx matwright wrong\n```\n<!-- said -->\n<!-- end -->\n')).rejects.toThrow(
      /instead of 0/,
    );
    await expect(fill('```sh\nnpx matwright a\n```\n<!-- said, exit 2 -->\n<!-- end -->\n')).rejects.toThrow(
      /ends with 0 instead of 2/,
    );
    expect(await fill('```sh\nnpx matwright wrong\n```\n<!-- said, exit 2 -->\n<!-- end -->\n')).toContain('wrong');
  });

  it('is refused where a mark is none, or would begin a block', async () => {
    await expect(fill('a\n<!-- numbr: a -->1<!-- end -->\n')).rejects.toThrow(/no other mark/);
    await expect(fill('words that\n<!-- number: n -->1<!-- end --> go on\n')).rejects.toThrow(/no line begins/);
    await expect(fill('<!-- said -->\n<!-- end -->\n')).rejects.toThrow(/no commands stand above/);
  });
});

it('reads lines as a shell does, as far as the guide has need of it', () => {
  const block = `npx matwright new a --title "Two words" --x 'a "b"' \\\n  --out f # why\n\nnpx matwright schema job > s.json\n`;
  expect(commandLines(block)).toEqual([
    { words: ['npx', 'matwright', 'new', 'a', '--title', 'Two words', '--x', 'a "b"', '--out', 'f'] },
    { words: ['npx', 'matwright', 'schema', 'job'], into: 's.json' },
  ]);
  expect(() => commandLines('a > b c')).toThrow('one file after >');
});
