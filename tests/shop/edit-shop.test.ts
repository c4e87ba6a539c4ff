import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { type Edit, editShop } from '../../src/shop/edit-shop.ts';
import { SHOP_FILES } from './shop-files.ts';

const EDITS: readonly Edit[] = [
  { kind: 'set', path: ['printers', 'office'], values: { x: 0.9971, y: 1.0004, date: '2026-03-01' } },
  { kind: 'set', path: ['guide'], values: { a: '0.31 mm', b: 0.9987 } },
  {
    kind: 'set',
    path: ['heads', 'pull-45'],
    values: {
      start: [
        { thickness: '1.4 mm', offset: '-1.21 mm' },
        { thickness: '3 mm', offset: '-1.6 mm' },
      ],
      stop: [{ thickness: '1.4 mm', offset: '-0.4 mm' }],
      overrun: '0.17 mm',
      blade: '0.3 mm, fresh: box #2',
      date: '2026-03-01',
    },
  },
  {
    kind: 'append',
    path: ['calibrations', 'printer'],
    value: {
      printer: 'office',
      date: '2026-03-01',
      sheets: [{ across: '199.42 mm', down: '200.08 mm' }],
      result: 'x 0.9971',
    },
  },
];

function edited(text: string, edits: readonly Edit[] = EDITS): string {
  const result = editShop(text, 'shop.yaml', edits);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

interface Shop extends Record<string, unknown> {
  readonly printers: Record<string, unknown>;
  readonly guide: Record<string, unknown>;
  readonly heads: Record<string, Record<string, unknown>>;
  readonly calibrations: Record<string, { readonly sheets: unknown }[]>;
}

const data = (text: string) => (parse(text.replace(/^\ufeff/, '')) ?? {}) as Shop;

/** Lines that hold nothing of what was edited must all still be there, as they were and in the same order. */
function isSubsequence(lines: readonly string[], all: readonly string[]): boolean {
  let at = 0;
  for (const line of all) if (at < lines.length && line === lines[at]) at++;
  return at === lines.length;
}

const comments = (text: string): string[] =>
  [...text.replace(/'[^'\n]*'|"[^"\n]*"/g, '').matchAll(/(?<=^|\s)# ?[^\n\r"']*/gm)].map((m) => m[0].trim());

describe('a shop file edited in place', () => {
  test('there are twenty and more', () => {
    expect(Object.keys(SHOP_FILES).length).toBeGreaterThanOrEqual(20);
  });

  test.each(Object.entries(SHOP_FILES))('%s', (_, text) => {
    const after = edited(text);
    const [before, now] = [data(text), data(after)];
    // What was asked for …
    expect(now.printers.office).toMatchObject({ x: 0.9971, y: 1.0004, date: '2026-03-01' });
    expect(now.guide).toMatchObject({ a: '0.31 mm', b: 0.9987 });
    expect(now.heads['pull-45']!.start).toEqual([
      { thickness: '1.4 mm', offset: '-1.21 mm' },
      { thickness: '3 mm', offset: '-1.6 mm' },
    ]);
    expect(now.heads['pull-45']!.blade).toBe('0.3 mm, fresh: box #2');
    expect(now.calibrations.printer!.at(-1)!.sheets).toEqual([{ across: '199.42 mm', down: '200.08 mm' }]);
    // … and all else as it was.
    expect(now.boards).toEqual(before.boards);
    expect(now.units).toEqual(before.units);
    expect(now.heads['pull-45']!.opening).toEqual(before.heads?.['pull-45']?.opening);
    expect(now.heads['pull-45']!.scribe).toEqual(before.heads?.['pull-45']?.scribe);
    expect(now.heads.other).toEqual(before.heads?.other);
    expect(now.guide.longest).toEqual(before.guide?.longest);
    expect(Object.keys(now).filter((key) => key in before)).toEqual(Object.keys(before));
    expect(isSubsequence(comments(text), comments(after))).toBe(true);
    expect(
      after
        .split('\n')
        .slice(0, -1)
        .every((line) => line.endsWith('\r') === text.includes('\r\n')),
    ).toBe(true);
    expect(after.startsWith('\ufeff')).toBe(text.startsWith('\ufeff'));
    const touched =
      /office|from the back|\bx\b|\by\b|guide|\ba:|\bb:|pull-45|start|stop|offset|heads|printers|blade|^\s*[}{]*\s*$|thickness|0\.2$|result/;
    const untouched = text.split('\n').filter((line) => !touched.test(line));
    expect(isSubsequence(untouched, after.split('\n'))).toBe(true);
    // Once more changes nothing but the list that grows.
    const again = edited(after, EDITS.slice(0, 3));
    expect(again).toBe(after);
  });

  test('no edit, no change', () => {
    for (const text of Object.values(SHOP_FILES)) expect(edited(text, [])).toBe(text);
  });

  test('exactly the value changes, to the letter', () => {
    const text = SHOP_FILES['a line a key']!;
    const after = edited(text, [{ kind: 'set', path: ['printers', 'office'], values: { x: 0.5 } }]);
    expect(after).toBe(text.replace('x: 0.9965 ', 'x: 0.5 '));
    const start = edited(text, [{ kind: 'set', path: ['heads', 'pull-45'], values: { start: '-1 mm' } }]);
    expect(start).toBe(text.replace('start: 1.2 mm', 'start: -1 mm'));
    const added = edited(text, [{ kind: 'set', path: ['heads', 'pull-45'], values: { overrun: '0.2 mm' } }]);
    expect(added).toBe(text.replace('    stop: -0.4 mm\n', '    stop: -0.4 mm\n    overrun: 0.2 mm\n'));
  });

  test('a comment within a list that is replaced is kept', () => {
    const after = edited(SHOP_FILES['lists of offsets with comments between']!);
    for (const comment of ['# measured in March', '# soft board', '# the thick one was cut twice']) {
      expect(after).toContain(comment);
    }
  });

  test('what an alias shares is not changed behind its back', () => {
    const shared = 'printers:\n  office: &p {x: 0.99, y: 1}\n  attic: *p\n';
    const result = editShop(shared, 'shop.yaml', [EDITS[0]!]);
    expect(result.ok ? [] : result.problems.map((p) => [p.code, p.file])).toEqual([['shop-not-editable', 'shop.yaml']]);
    const own = editShop(shared, 'shop.yaml', [{ kind: 'set', path: ['printers', 'attic'], values: { x: 1.1 } }]);
    expect(own.ok).toBe(false);
  });
});

describe('items of lists', () => {
  const shelf = `shelf:
  # the rack by the door
  - {id: S1, board: bone-4, size: 8 x 10 in}   # a bruised corner
  - id: S2   # tall
    board: bone-4
    size: 9 x 30 in
  - {id: S3, board: bone-4, size: 11 x 14 in}
boards: {bone-4: {sheets: [{size: 32 x 40 in, count: 9}]}}
`;
  const remove = (at: number): Edit => ({ kind: 'remove', path: ['shelf'], at });

  test('are taken out of a list of lines, with their comments left', () => {
    expect(edited(shelf, [remove(1)])).toBe(
      shelf.replace('  - id: S2   # tall\n    board: bone-4\n    size: 9 x 30 in\n', '  # tall\n'),
    );
    expect(edited(shelf, [remove(0)])).toBe(shelf.replace(/ {2}- \{id: S1.*\}\s+(?=#)/, '  '));
    expect(edited(shelf, [remove(2), remove(1), remove(0)])).toMatch(
      /^shelf: \[\]\n *# the rack by the door\n *# a bruised corner\n *# tall\nboards/m,
    );
  });

  test('are taken out of a list in brackets', () => {
    const flow = 'shelf: [{id: S1}, {id: S2}, {id: S3}]\n';
    expect(edited(flow, [remove(0)])).toBe('shelf: [{id: S2}, {id: S3}]\n');
    expect(edited(flow, [remove(2)])).toBe('shelf: [{id: S1}, {id: S2}]\n');
    expect(edited(flow, [remove(1), remove(1), remove(0)])).toBe('shelf: []\n');
    expect(edited('{"shelf": [{"id": "S1"}, {"id": "S2"}]}', [remove(0)])).toBe('{"shelf": [{"id": "S2"}]}');
  });

  test('are changed in their place', () => {
    const path = ['boards', 'bone-4', 'sheets', 0];
    expect(edited(shelf, [{ kind: 'set', path, values: { count: 7 } }])).toBe(shelf.replace('count: 9', 'count: 7'));
    expect(
      editShop(shelf, 'shop.yaml', [{ kind: 'set', path: [...path.slice(0, -1), 1], values: { count: 7 } }]).ok,
    ).toBe(false);
  });
});
