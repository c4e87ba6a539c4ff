import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, parseDocument, stringify } from 'yaml';
import { type Edit, editShop } from '../../src/shop/edit-shop.ts';

const name = fc.constantFrom('office', 'attic', 'pull-45', 'push-90', 'bone-4');
const length = fc.constantFrom('1.4 mm', '5/8"', '16 1/2', '-0.4 mm', 'it’s 3', 'a # b', '0.3 mm: fresh');
const scalar = fc.oneof(
  length,
  fc.double({ min: -5, max: 5, noNaN: true }),
  fc.integer({ min: -9, max: 9 }),
  fc.boolean(),
);
const list = fc.array(fc.record({ thickness: length, offset: length }), { maxLength: 3 });
/** An empty list below its key is written by the library where its own reader refuses it. */
const written = fc.array(fc.record({ thickness: length, offset: length }), { minLength: 1, maxLength: 3 });
const entry = fc.dictionary(
  fc.constantFrom('x', 'y', 'start', 'stop', 'bevel', 'blade', 'margin'),
  fc.oneof(scalar, written),
  { minKeys: 1 },
);
const section = fc.dictionary(name, entry, { maxKeys: 3 });
const style = fc.record({
  collectionStyle: fc.constantFrom('any', 'block', 'flow') as fc.Arbitrary<'any' | 'block' | 'flow'>,
  indent: fc.constantFrom(2, 4),
  defaultStringType: fc.constantFrom('PLAIN', 'QUOTE_DOUBLE', 'QUOTE_SINGLE') as fc.Arbitrary<
    'PLAIN' | 'QUOTE_DOUBLE' | 'QUOTE_SINGLE'
  >,
  indentSeq: fc.boolean(),
  lineWidth: fc.constantFrom(0, 40),
  flowCollectionPadding: fc.boolean(),
});

/** Each section written in a style of its own, comments between them. */
const shop = fc
  .uniqueArray(
    fc.record({
      key: fc.constantFrom('printers', 'heads', 'guide', 'boards'),
      value: section,
      style,
      comment: fc.boolean(),
    }),
    {
      selector: (part) => part.key,
      maxLength: 4,
    },
  )
  .map((parts) =>
    parts
      .map(({ key, value, style: how, comment }, i) => {
        const text = stringify({ [key]: value }, how);
        // A whole file in brackets cannot be joined with others: only its value is.
        const lines = text.startsWith('{') ? `${key}: ${stringify(value, how)}` : text;
        return `${comment ? `# comment ${i}\n` : ''}${lines}${comment ? '\n' : ''}`;
      })
      .join(''),
  );

const edit: fc.Arbitrary<Exclude<Edit, { readonly kind: 'remove' }>> = fc.oneof(
  fc.record({
    kind: fc.constant('set' as const),
    path: fc.tuple(fc.constantFrom('printers', 'heads'), name).map((path) => [...path]),
    values: fc.dictionary(
      fc.constantFrom('x', 'y', 'start', 'blade', 'date'),
      fc.oneof(length, list, fc.double({ min: -2, max: 2, noNaN: true })),
      {
        minKeys: 1,
      },
    ),
  }),
  fc.record({
    kind: fc.constant('append' as const),
    path: fc.constant(['calibrations', 'printer']),
    value: fc.record({ printer: name, sheets: list, result: length }),
  }),
);

type Data = Record<string, Record<string, Record<string, unknown>>>;
const data = (text: string): Data => (parse(text, { version: '1.2' }) ?? {}) as Data;

describe('random shops, edited at random', () => {
  test('what was asked for is there, all else is as it was, and no comment is lost', () => {
    let refused = 0;
    fc.assert(
      fc.property(shop, fc.array(edit, { minLength: 1, maxLength: 4 }), (text, edits) => {
        fc.pre(parseDocument(text).errors.length === 0);
        const result = editShop(text, 'shop.yaml', edits);
        if (!result.ok) {
          refused++;
          return;
        }
        const [before, after] = [data(text), data(result.value)];
        const expected = structuredClone(before) as Record<string, unknown>;
        for (const each of edits) {
          let at = expected as Record<string, Record<string, unknown>>;
          for (const step of each.kind === 'set' ? each.path : each.path.slice(0, -1)) {
            at[step] ??= {};
            at = at[step] as typeof at;
          }
          if (each.kind === 'set') Object.assign(at, each.values);
          else if (each.kind === 'append')
            at[each.path.at(-1)!] = [...((at[each.path.at(-1)!] ?? []) as unknown[]), each.value] as never;
        }
        expect(after).toEqual(expected);
        for (const comment of text.match(/^# comment \d$/gm) ?? []) expect(result.value).toContain(comment);
      }),
      { numRuns: 150, seed: 7 },
    );
    expect(refused).toBe(0);
  });

  test('items are taken out of lists, and nothing else changes', () => {
    let refused = 0;
    fc.assert(
      fc.property(shop, fc.nat(), (text, pick) => {
        fc.pre(parseDocument(text).errors.length === 0);
        const lists = Object.entries(data(text)).flatMap(([key, section]) =>
          Object.entries(section).flatMap(([own, map]) =>
            Object.entries(map).flatMap(([field, value]) => (Array.isArray(value) ? [[key, own, field]] : [])),
          ),
        );
        fc.pre(lists.length > 0);
        const path = lists[pick % lists.length]!;
        const [key, own, field] = path as [string, string, string];
        const before = data(text);
        const items = before[key]![own]![field] as unknown[];
        const at = pick % items.length;
        const result = editShop(text, 'shop.yaml', [{ kind: 'remove', path, at }]);
        if (!result.ok) {
          refused++;
          return;
        }
        before[key]![own]![field] = items.filter((_, i) => i !== at);
        expect(data(result.value)).toEqual(before);
        for (const comment of text.match(/^# comment \d$/gm) ?? []) expect(result.value).toContain(comment);
      }),
      { numRuns: 150, seed: 7 },
    );
    expect(refused).toBe(0);
  });
});
