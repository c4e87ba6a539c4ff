import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { messagesPage, SECTIONS } from '../../src/dev/messages.ts';

const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name}`);

const CODE = "'([a-z0-9]+(?:-[a-z0-9]+)+)'";
/** Where a code stands in the source: the first argument of what makes or passes on a problem, or its own key. */
const MADE = new RegExp(
  `(?:\\b(?:error|warning|refuse|refused|wrong|problem|add|stop|unfit|told|Unreadable)\\(\\s*|\\bcode: )${CODE}`,
  'g',
);

function made(): ReadonlySet<string> {
  const found = new Set<string>();
  for (const file of filesIn('src')) {
    if (file.endsWith('/codes.ts')) continue;
    for (const [, code] of readFileSync(file, 'utf8').matchAll(MADE)) found.add(code!);
  }
  return found;
}

const LISTED = SECTIONS.flatMap(([, codes]) => Object.keys(codes));

describe('the page of messages', () => {
  it('is what the tables say (npm run reference)', () => {
    expect(readFileSync('examples/messages.md', 'utf8')).toBe(messagesPage());
  });

  it('lists every code once, in whole sentences', () => {
    expect(new Set(LISTED).size).toBe(LISTED.length);
    for (const [, codes] of SECTIONS)
      for (const { means, remedy } of Object.values(codes)) {
        expect(means).toMatch(/^[A-Z`].*\.$/);
        expect(remedy).toMatch(/^[A-Z`].*\.$/);
      }
  });

  it('lists every code that the sources make', () => {
    const codes = made();
    expect(codes.size).toBeGreaterThan(150);
    expect([...codes].filter((code) => !LISTED.includes(code))).toEqual([]);
  });

  it('lists none that the sources do not have', () => {
    const source = filesIn('src')
      .filter((file) => !file.endsWith('/codes.ts'))
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n');
    // The names of what a shop lists are put together: board-unknown.
    const there = (code: string): boolean => source.includes(`'${code}'`) || /^[a-z]+-unknown$/.test(code);
    expect(LISTED.filter((code) => !there(code))).toEqual([]);
  });

  it('has a test for every code that makes it appear', () => {
    const tests = filesIn('tests')
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n');
    expect(LISTED.filter((code) => !tests.includes(`'${code}'`))).toEqual([]);
  });
});
