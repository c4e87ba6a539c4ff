import fc from 'fast-check';
import { expect, it } from 'vitest';
import { jsonSlip } from '../../src/read/text/json-slips.ts';
import { plain } from '../../src/read/text/node.ts';
import { readText } from '../../src/read/text/text.ts';

/** Values that a job may hold: no null, no key that is refused, nothing invisible. */
const noControl = (text: string): boolean => !/\p{Cc}|[\ufffd\ufeff\ufffe\uffff]/u.test(text);
const value = fc.letrec((tie) => ({
  any: fc.oneof(
    { maxDepth: 4 },
    fc.string({ unit: 'binary' }).filter(noControl),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.integer(),
    fc.boolean(),
    fc.array(tie('any'), { maxLength: 4 }),
    fc.dictionary(
      fc.string({ unit: 'grapheme' }).filter((key) => noControl(key) && key !== '<<' && key !== '__proto__'),
      tie('any'),
      { maxKeys: 4 },
    ),
  ),
})).any;

it('reads JSON as the platform does, however it is laid out', () => {
  fc.assert(
    fc.property(value, fc.constantFrom(undefined, 2, '\t'), (given, indent) => {
      const text = JSON.stringify({ given }, null, indent);
      const read = readText(text, 'x.json');
      expect(read.ok ? read.value.problems : read.problems).toEqual([]);
      const tree = read.ok ? plain(read.value.source.root) : undefined;
      expect(JSON.parse(JSON.stringify(tree))).toEqual(JSON.parse(text));
    }),
  );
});

it('finds a slip in whatever is no JSON, and none in what is', () => {
  const broken = fc
    .tuple(
      value,
      fc.nat(),
      fc.constantFrom('', '"', "'", ',', ':', '[', ']', '{', '}', '\\', '#', '//', 'x', '1', '-', '.', '\n'),
    )
    .map(([given, at, put]) => {
      const text = JSON.stringify({ given });
      const place = at % text.length;
      return `${text.slice(0, place)}${put}${text.slice(place + 1)}`;
    });
  let wrong = 0;
  fc.assert(
    fc.property(broken, (text) => {
      let parses = true;
      try {
        JSON.parse(text);
      } catch {
        parses = false;
        wrong += 1;
      }
      const slip = jsonSlip(text);
      expect(slip === undefined).toBe(parses);
      if (slip !== undefined) expect(slip.at >= 0 && slip.at <= text.length).toBe(true);
    }),
    { numRuns: 500 },
  );
  expect(wrong).toBeGreaterThan(200);
});
