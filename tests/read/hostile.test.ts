import { describe, expect, it } from 'vitest';
import { MAX_BYTES, MAX_DEPTH, MAX_PROBLEMS } from '../../src/read/text/bounds.ts';
import { codes, read, refused, SHOP, shopOf } from '../job/texts.ts';

/** `unit` again and again, up to the limit. */
const filled = (unit: string, before = '', after = ''): string =>
  before + unit.repeat(Math.floor((MAX_BYTES - before.length - after.length) / unit.length)) + after;

const lines = (line: (index: number) => string): string => {
  let text = '';
  for (let index = 0; ; index++) {
    const next = line(index);
    if (text.length + next.length > MAX_BYTES) return text;
    text += next;
  }
};

const OPENING = 'openings: [{}]\n';

describe('a text that is too long', () => {
  it.each(['x.yaml', 'x.json'])('is refused before anything reads it (%s)', (file) => {
    const long = 'title: x\n'.repeat(1_200_000);
    expect(refused(read(long, undefined, file))).toMatchObject([{ code: 'text-too-long', line: 1, column: 1, file }]);
    expect(codes(read(OPENING, long))).toStrictEqual(['text-too-long']);
  });

  it('is measured in bytes of UTF-8', () => {
    const comment = (bytes: number) => `${OPENING}#${'é'.repeat((bytes - OPENING.length - 1) / 2)}`;
    expect(read(comment(MAX_BYTES)).ok).toBe(true);
    expect(codes(read(comment(MAX_BYTES + 2)))).toStrictEqual(['text-too-long']);
    expect(read(OPENING.padEnd(MAX_BYTES, ' ')).ok).toBe(true);
    expect(codes(read(OPENING.padEnd(MAX_BYTES + 1, ' ')))).toStrictEqual(['text-too-long']);
  });
});

describe('nesting', () => {
  /** `line` for each level, indented by `step`, then a value. */
  const stairs = (levels: number, step: number, line: (indent: string) => string): string => {
    const indents = Array.from({ length: levels + 1 }, (_, level) => ' '.repeat(level * step));
    return `${indents.slice(0, -1).map(line).join('')}${indents.at(-1)}1\n`;
  };
  const shapes: readonly (readonly [string, (depth: number) => string])[] = [
    ['brackets', (depth) => '['.repeat(depth) + ']'.repeat(depth)],
    ['braces', (depth) => `${'{a: '.repeat(depth)}1${'}'.repeat(depth)}`],
    ['both, over lines', (depth) => `${'[\n{a: '.repeat(depth / 2)}1${'}\n]'.repeat(depth / 2)}`],
    ['indented keys', (depth) => stairs(depth, 1, (indent) => `${indent}k:\n`)],
    ['hyphens on a line', (depth) => `${'- '.repeat(depth)}1\n`],
    ['hyphens on lines', (depth) => stairs(depth, 1, (indent) => `${indent}-\n`)],
    ['lists at the column of their keys', (depth) => stairs(depth / 2, 2, (indent) => `${indent}k:\n${indent}-\n`)],
    ['hyphens before keys', (depth) => stairs(depth / 2, 4, (indent) => `${indent}- k:\n`)],
    ['explicit keys', (depth) => `${'? '.repeat(depth)}1\n`],
  ];

  it.each(shapes)('of %s is allowed up to the limit and refused beyond', (_, nest) => {
    expect(codes(read(nest(MAX_DEPTH)))).not.toContain('text-too-deep');
    expect(codes(read(nest(MAX_DEPTH + 2)))).toStrictEqual(['text-too-deep']);
  });

  it.each(shapes)('of %s without end is refused', (_, nest) => {
    expect(codes(read(nest(600)))).toStrictEqual(['text-too-deep']);
    expect(codes(shopOf(nest(600)))).toStrictEqual(['text-too-deep']);
  });

  it.each(['[', '{', '- ', '? ', 'a: ', '[{', '- ? ', '{"a":['])('of %j, never closed, is refused', (unit) => {
    expect(codes(read(filled(unit))).length).toBe(1);
    expect(codes(read(filled(unit), undefined, 'x.json')).length).toBe(1);
  });

  it('is not counted in quotes, comments and block texts', () => {
    const brackets = '['.repeat(100);
    expect(codes(read(`title: "${brackets}"\n# ${brackets}\ncustomer: '${brackets}'\n${OPENING}`))).toStrictEqual([]);
    expect(codes(read(`title: >-\n  ${brackets}\n${OPENING}`))).toStrictEqual([]);
    expect(codes(read(`title: it's ${brackets}\n${OPENING}`))).toStrictEqual([]);
  });

  it('that only a malformed text has is refused too', () => {
    for (const unit of ["a: |\n|\na:\n\n   ''>\n\n", 'a: |\n|\n']) {
      expect(codes(read(unit.repeat(400)))).toStrictEqual(['text-too-deep']);
    }
    for (const unit of [' #>\na: : ? - ', 'a: ---\n\n  [: ', "\n   ''? a: ", 'a:\n""? : ']) {
      const [code, ...more] = codes(read(unit.repeat(400)));
      expect(['yaml-colon', 'yaml-indent']).toContain(code);
      expect(more).toStrictEqual([]);
    }
  });

  it('cannot be hidden behind quotes that are none', () => {
    const deep = `${'['.repeat(200)}${']'.repeat(200)}`;
    expect(codes(read(`a: |\n  "\nb: ${deep}\nc: "\n"\n`))).toStrictEqual(['text-too-deep']);
    expect(codes(read(`a: it's\nb: ${deep}\nc: it's\n`))).toStrictEqual(['text-too-deep']);
    expect(codes(read(`# don't\nb: ${deep}\n# don't\n`))).toStrictEqual(['text-too-deep']);
    expect(codes(read(`a: x"\nb: ${deep}\nc: x"\n`))).toStrictEqual(['text-too-deep']);
  });
});

describe('aliases', () => {
  const bomb = (levels: number, each: number) =>
    lines((i) =>
      i > levels
        ? '#'.repeat(MAX_BYTES)
        : `a${i}: &a${i} [${
            i === 0
              ? '1'
              : Array(each)
                  .fill(`*a${i - 1}`)
                  .join(',')
          }]\n`,
    );

  it('that multiply are refused', () => {
    for (const [levels, each] of [
      [9, 10],
      [30, 2],
      [4, 100],
    ] as const) {
      expect(codes(read(bomb(levels, each)))).toStrictEqual(['text-too-many-values']);
    }
  });

  it('that nest are refused', () => {
    expect(codes(read(bomb(200, 1)))).toStrictEqual(['text-too-many-values']);
  });

  it('within themselves are refused', () => {
    expect(codes(read(`${OPENING}mat: &m\n  frame: {inside: *m, nominal: *m}\n`))).toStrictEqual([
      'yaml-alias',
      'yaml-alias',
    ]);
  });

  it('of a sound size are values as any other, and problems in them stand where they are written', () => {
    const text = 'mat:\n  outer: &size 16 x 20\n  frame: {nominal: *size}\nopenings: [{}]\n';
    expect(codes(read(text))).toStrictEqual([]);
    const problems = refused(read(text.replace('16 x 20', '16 x -20')));
    expect(problems).toMatchObject([{ code: 'length-negative', path: ['mat', 'outer'], line: 2, column: 16 }]);
  });
});

describe('a flood', () => {
  const floods: readonly (readonly [string, string])[] = [
    ['unknown keys', lines((i) => `k${i}: 1\n`)],
    ['the same key', filled('k: 1\n')],
    ['keys in braces', lines((i) => (i === 0 ? '{' : `k${i}: 1,`))],
    ['items', filled('- 1\n')],
    ['empty lists', filled('[],', '[', ']')],
    ['nothing', filled('a:\n')],
    ['line ends', filled('\n')],
    ['carriage returns', filled('\r')],
    ['closing brackets', filled(']')],
    ['commas', filled(',', '[')],
    ['quotes', filled('x: "\n')],
    ['escapes', filled('\\q', 'a: "', '"')],
    ['backslashes', filled('\\', 'a: "', '"')],
    ['anchors', lines((i) => `- &a${i} 1\n`)],
    ['aliases', filled('- *a\n', '- &a 1\n')],
    ['tags', filled('- !!str 1\n')],
    ['documents', filled('---\n')],
    ['directives', filled('%YAML 1.2\n')],
    ['merge keys', filled('<<: 1\n')],
    ['colons', filled(':')],
    ['explicit keys', filled('? a\n: b\n')],
    ['block texts', filled('a: |\n x\n')],
    ['blank lines in a block text', filled('\n', 'a: |+\n')],
    ['a long text', filled('x', 'title: ')],
    ['a long key', filled('x', '', ': 1')],
    ['a long number', filled('1', 'count: ')],
    ['a long decimal', filled('0', 'count: 1.', '1')],
    ['a long length', filled('1', 'openings: [{size: "', '"}]')],
    ['a long size', filled('x', 'openings: [{size: "', '"}]')],
    ['openings', filled('{x: 1},', 'openings: [', ']')],
    ['layers', filled('{board: 1},', 'mat: {layers: [', ']}')],
    ['boards', lines((i) => (i === 0 ? 'boards:\n' : ` b${i}: {thickness: -1}\n`))],
    ['wrong indentation', filled('a\n b: c\n')],
    ['JSON keys', lines((i) => (i === 0 ? '{"a":1' : `,"k${i}":1`))],
    ['JSON items', filled('1,', '[')],
    ['JSON escapes', filled('\\u0041', '{"a":"', '"}')],
  ];

  it.each(floods)('of %s is refused with a handful of problems', (_, text) => {
    expect(text.length).toBeLessThanOrEqual(MAX_BYTES);
    for (const file of ['x.yaml', 'x.json']) {
      const problems = refused(read(text, undefined, file));
      expect(problems.length).toBeLessThanOrEqual(MAX_PROBLEMS + 1);
      for (const { line, column, message, hint } of problems) {
        expect(line).toBeGreaterThan(0);
        expect(column).toBeGreaterThan(0);
        expect(message.length + hint.length).toBeLessThan(400);
      }
    }
    const asShop = read(OPENING, text);
    if (!asShop.ok) expect(asShop.problems.length).toBeLessThanOrEqual(MAX_PROBLEMS + 1);
  });

  it('of problems is counted', () => {
    const text = OPENING + Array.from({ length: 80 }, (_, i) => `k${i}: 1\n`).join('');
    const problems = refused(read(text));
    expect(problems).toHaveLength(MAX_PROBLEMS + 1);
    expect(problems.at(-1)).toMatchObject({
      code: 'problems-more',
      message: 'there are 30 more problems from here on',
      line: 52,
    });
  });

  it('of sound boards is a shop', () => {
    const boards = Array.from(
      { length: 1000 },
      (_, i) => `  b${i}: {thickness: 1.4 mm, colour: "#efe9dc", price: ${i}}\n`,
    );
    expect(codes(shopOf(`boards:\n${boards.join('')}`))).toStrictEqual([]);
  });
});

describe('names that every object has', () => {
  it.each(['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf', '__defineGetter__'])(
    '%s is an unknown key wherever it stands',
    (name) => {
      const text = `openings: [{${name}: {x: 1}}]\nmat: {${name}: 1, border: {${name}: 2}}\n${name}: {polluted: true}\n`;
      const json = `{"openings": [{"${name}": {"x": 1}}], "mat": {"${name}": 1}, "${name}": {"polluted": true}}`;
      expect(codes(read(text))).toStrictEqual(Array(4).fill('key-unknown'));
      expect(codes(read(json, undefined, 'x.json'))).toStrictEqual(Array(3).fill('key-unknown'));
      expect(codes(shopOf(`boards: {a: {${name}: 1}}\n${name}: 2\n`))).toStrictEqual(Array(2).fill('key-unknown'));
      expect('polluted' in {}).toBe(false);
    },
  );
});

describe('texts that look otherwise than they are', () => {
  it('may begin with a byte order mark', () => {
    expect(codes(read(`\ufeff${OPENING}`))).toStrictEqual([]);
    expect(refused(read('\ufeffx: 1\nopenings: [{}]'))[0]).toMatchObject({ line: 1, column: 1 });
    expect(codes(read('\ufeff{"openings": [{}]}', undefined, 'x.json'))).toStrictEqual([]);
  });

  it('may end their lines in any way, the places stay the same', () => {
    const text = 'openings: [{}]\ncount: 2\ncuont: 3\n';
    for (const end of ['\n', '\r\n', '\r']) {
      expect(refused(read(text.replaceAll('\n', end)))).toMatchObject([{ code: 'key-unknown', line: 3, column: 1 }]);
    }
  });

  it('are told the first character that no job holds', () => {
    for (const character of ['\u0001', '\u001b', '\u007f', '\u009b', '\ufffe', '\uffff']) {
      expect(refused(read(`${OPENING}# ${character}\n`))).toMatchObject([{ code: 'text-control', line: 2, column: 3 }]);
    }
    expect(refused(read(SHOP.replaceAll('', '\u0000')))).toMatchObject([{ code: 'text-not-text', line: 1, column: 1 }]);
  });

  it('keep signs of all languages', () => {
    const result = read(`title: Цапля ½ 鷺 🪶 "é"\n${OPENING}`);
    expect(result.ok && result.value.job.title).toBe('Цапля ½ 鷺 🪶 "é"');
  });
});
