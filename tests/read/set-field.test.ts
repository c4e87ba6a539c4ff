import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { parse, parseDocument } from 'yaml';
import { showPath } from '../../src/problems/show.ts';
import { clearField, setField } from '../../src/read/edit/set-field.ts';

type Path = readonly (string | number)[];
type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value };

const root = new URL('../../', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, root), 'utf8');
const FILES = [
  ...readdirSync(new URL('templates/', root))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `templates/${name}`),
  ...['heron/job', 'heron/shop', 'terns/job', 'terns/shop', 'monday/curlew', 'monday/shop', 'monday/tide-mill'].map(
    (name) => `examples/${name}.yaml`,
  ),
];

const data = (text: string): Value => (parse(text, { version: '1.2' }) ?? {}) as Value;

/** A key for every map's entry and a place for every list's item. */
function places(value: Value, path: Path = []): readonly Path[] {
  const own = path.length === 0 ? [] : [path];
  if (typeof value !== 'object') return own;
  const inner = Array.isArray(value)
    ? (value as readonly Value[]).flatMap((each, i) => places(each, [...path, i]))
    : Object.entries(value).flatMap(([key, each]) => places(each, [...path, key]));
  return [...own, ...inner];
}

const at = (value: Value, path: Path): Value =>
  path.reduce<Value>((node, step) => (node as Record<string | number, Value>)[step]!, value);

/** The value with another at a path, or with none. */
function changed(value: Value, path: Path, to: Value | undefined): Value {
  const copy = structuredClone(value) as Value;
  const above = at(copy, path.slice(0, -1)) as Record<string | number, Value> & Value[];
  const last = path.at(-1)!;
  if (to !== undefined) above[last as string] = to;
  else if (typeof last === 'number') above.splice(last, 1);
  else delete above[last];
  return copy;
}

function made(result: ReturnType<typeof setField>): string {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const comments = (text: string): readonly string[] => text.match(/(?<=^|\s)#.*$/gm) ?? [];

/** Everything before and behind a node is as it was. */
function onlyThere(before: string, after: string, path: Path): void {
  const { range } = parseDocument(before, { version: '1.2' }).getIn(path, true) as { range: [number, number, number] };
  expect(after.startsWith(before.slice(0, range[0]))).toBe(true);
  expect(after.endsWith(before.slice(range[1]))).toBe(true);
}

const words = fc.constantFrom<Value>(7, 12.5, '3 3/8', '41.9 cm', '16 x 20', 'a: b', "it's", '5/8"', '', '007', true);
const wider = fc.oneof(words, fc.constantFrom<Value>([1, '2 1/2'], { top: 3, sides: '2 3/4' }, []));

describe('one field of a text', () => {
  it.each(FILES)('any value of %s is set, all else stays, and set back it is the same text', (name) => {
    const text = textOf(name);
    const before = data(text);
    let back = 0;
    for (const [n, path] of places(before).entries()) {
      const was = at(before, path);
      const scalar = typeof was !== 'object';
      const values = fc.sample(scalar ? words : wider, { numRuns: 1, seed: 77 + n });
      for (const value of values) {
        const next = made(setField(text, path, value));
        expect(data(next), showPath(path)).toEqual(changed(before, path, value));
        expect(comments(next)).toEqual(comments(text));
        if (scalar) onlyThere(text, next, path);
      }
      // A number may stand with more digits than it needs.
      const written = source(text, path);
      if (!scalar || (typeof was === 'number' && written !== String(was))) continue;
      const quoted = /^["']/.test(written);
      const again = made(setField(made(setField(text, path, quoted ? 'x y' : 7)), path, was));
      if (quoted) expect(data(again)).toEqual(before);
      else expect(again, showPath(path)).toBe(text);
      back++;
    }
    expect(back).toBeGreaterThan(3);
  });

  it.each(FILES)('any key or item of %s is cleared, and nothing else with it', (name) => {
    const text = textOf(name);
    const before = data(text);
    for (const path of places(before)) {
      const next = made(clearField(text, path));
      expect(data(next), showPath(path)).toEqual(changed(before, path, undefined));
      for (const comment of comments(text)) expect(comments(next)).toContain(comment);
      if (typeof path.at(-1) === 'string') onlyThereLess(text, next, path);
    }
  });

  it('works the same in JSON and in brackets over several lines', () => {
    for (const name of ['templates/seven-title.yaml', 'templates/triple-unequal.yaml', 'examples/heron/job.yaml']) {
      const before = data(textOf(name));
      for (const text of [JSON.stringify(before, null, 2), JSON.stringify(before)]) {
        for (const path of places(before)) {
          const set = made(setField(text, path, '3 3/8'));
          expect(JSON.parse(set)).toEqual(changed(before, path, '3 3/8'));
          expect(JSON.parse(made(clearField(text, path)))).toEqual(changed(before, path, undefined));
        }
      }
    }
  });

  it('makes what leads to a new field', () => {
    expect(made(setField('title: Heron\n', ['mat', 'border', 'left'], '2 3/4'))).toBe(
      'title: Heron\nmat:\n  border: {left: 2 3/4}\n',
    );
    expect(made(setField('', ['mat', 'outer'], '16 x 20'))).toBe('mat: {outer: 16 x 20}\n');
    expect(made(setField('{}', ['mat', 'outer'], '16 x 20'))).toBe('{"mat": {"outer": "16 x 20"}}');
    const list = 'openings:\n  - size: 8 x 10\n';
    expect(made(setField(list, ['openings', 0, 'overlap', 'left'], 0.25))).toBe(
      'openings:\n  - size: 8 x 10\n    overlap: {left: 0.25}\n',
    );
  });

  it('makes the first field of a text without any', () => {
    for (const [text, after] of [
      ['', 'title: Heron\n'],
      ['# Mine.\n', '# Mine.\ntitle: Heron\n'],
    ] as const)
      expect(setField(text, ['title'], 'Heron')).toMatchObject({ ok: true, value: after });
  });

  it('keeps comments, line ends and the quotes that a text stands in', () => {
    const text = "# for the show\r\nmat:\r\n  outer: '16 x 20' # of the frame\r\n  border: 3\r\n";
    expect(made(setField(text, ['mat', 'outer'], '11 x 14'))).toBe(text.replace('16 x 20', '11 x 14'));
    expect(made(clearField(text, ['mat', 'outer']))).toBe(
      '# for the show\r\nmat:\r\n  # of the frame\r\n  border: 3\r\n',
    );
    const both = 'mat:\n  border: # shown\n    left: 3\n  outer: 16 x 20\n';
    expect(made(clearField(both, ['mat', 'border', 'left']))).toBe('mat:\n  border: {} # shown\n  outer: 16 x 20\n');
    const item = 'openings:\n  - size: 8 x 10 # the etching\n    overlap: 1/4\n';
    expect(data(made(clearField(item, ['openings', 0, 'size'])))).toEqual({ openings: [{ overlap: '1/4' }] });
    expect(made(clearField('openings:\n  - size: 8 x 10\n', ['openings', 0, 'size']))).toBe('openings:\n  - {}\n');
    const lines = 'mat: {\n  outer: 16 x 20, # whole\n  border: 3 # sides\n}\n';
    for (const key of ['outer', 'border']) {
      const cleared = made(clearField(lines, ['mat', key]));
      expect(comments(cleared)).toEqual(['# whole', '# sides']);
      expect(Object.keys((data(cleared) as { mat: object }).mat)).toHaveLength(1);
    }
    const folded = 'title: |\n  Heron\n  in reeds\ncount: 2\n';
    expect(made(setField(folded, ['title'], 'Tern'))).toBe('title: Tern\ncount: 2\n');
    expect(made(clearField(folded, ['title']))).toBe('count: 2\n');
  });

  it('leaves a text alone that has no such field', () => {
    const text = 'mat: {outer: 16 x 20}\n';
    for (const path of [['title'], ['mat', 'border'], ['bench', 'snap']])
      expect(made(clearField(text, path))).toBe(text);
  });

  const said = (result: ReturnType<typeof setField>): readonly string[] => {
    const problems = result.ok ? [] : result.problems;
    expect(problems.map(({ code }) => code)).toEqual(['field-not-editable']);
    return problems.map(({ message }) => message);
  };

  it('refuses, in words, what stands in two places by an anchor', () => {
    const text = 'mat:\n  layers:\n    - &b {board: bone-4}\n    - *b\n';
    for (const index of [0, 1]) {
      const result = setField(text, ['mat', 'layers', index, 'board'], 'slate-4');
      expect(said(result)).toEqual([
        `"mat.layers[${index}]" is shared with another place by an anchor, so it cannot be changed alone`,
      ]);
    }
  });

  it('refuses a place within a single value, no place at all, and what is no value', () => {
    const text = 'openings:\n  - {overlap: 1/4}\n';
    expect(said(setField(text, ['openings', 0, 'overlap', 'left'], 1))[0]).toMatch(/cannot be changed/);
    expect(said(setField(text, [], 1))[0]).toMatch(/one at least/);
    expect(said(setField(text, ['title'], Number.NaN))[0]).toMatch(/holds a text, a number/);
    expect(said(setField(text, ['openings', 4], 'x'))[0]).toMatch(/cannot be changed/);
    const broken = setField('a: [', ['title'], 'x');
    expect(broken.ok ? [] : broken.problems.map(({ code }) => code)).toEqual(['yaml-brackets']);
  });
});

/** As it stands in the text. */
function source(text: string, path: Path): string {
  const { range } = parseDocument(text, { version: '1.2' }).getIn(path, true) as { range: [number, number, number] };
  return text.slice(range[0], range[1]);
}

/** Lines above the field's, and below its last, are as they were. */
function onlyThereLess(before: string, after: string, path: Path): void {
  const { range } = parseDocument(before, { version: '1.2' }).getIn(path, true) as { range: [number, number, number] };
  const above = before.slice(0, before.slice(0, range[0]).trimEnd().lastIndexOf('\n') + 1);
  const end = before.indexOf('\n', range[1] - 1);
  // Behind a hyphen the next key moves up.
  expect(after.endsWith(end === -1 ? '' : before.slice(end + 1).trimStart()), showPath(path)).toBe(true);
  // Where it was the last key of its map, what stands above it tells so.
  if (!after.startsWith(above)) expect(after).toMatch(/\{\}/);
}

it('an item is put behind the last of a list, in lines or in brackets, and no further', () => {
  const lines = 'openings:\n  - size: 5 x 7 # the first\n';
  const item = { size: '8 x 10' };
  expect(setField(lines, ['openings', 1], item)).toMatchObject({ ok: true, value: `${lines}  - {size: 8 x 10}\n` });
  const brackets = 'openings: [{size: 5 x 7}]\n';
  const longer = 'openings: [{size: 5 x 7}, {size: 8 x 10}]\n';
  expect(setField(brackets, ['openings', 1], item)).toMatchObject({ ok: true, value: longer });
  expect(setField(lines, ['openings', 2], item)).toMatchObject({ ok: false });
});

test.each(['', '# nothing yet\n'])('the first key of a text that holds nothing is set: %j', (text) => {
  expect(setField(text, ['title'], 'Heron')).toMatchObject({ ok: true, value: `${text}title: Heron\n` });
  expect(setField(text, ['sheets'], [{}])).toMatchObject({ ok: true, value: `${text}sheets:\n  - {}\n` });
});
