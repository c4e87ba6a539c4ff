import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemBox } from '../../src/drawing/bounds.ts';
import type { Rotation } from '../../src/drawing/document.ts';
import type { Item } from '../../src/drawing/model.ts';
import { fraction } from '../../src/fonts/fractions.ts';
import { contains, grown, union } from '../../src/geometry/box.ts';
import { type Block, beside, boxAt, inGroup, joined, labelBlock, stacked, turnedBlock } from '../../src/text/block.ts';
import { WORD_PENS } from '../../src/text/figures.ts';
import { widthOf } from '../../src/text/line.ts';
import { fittedLine, headline, level, line, paragraph, typed } from '../../src/text/paragraph.ts';
import { BOLD, FINE, LARGE, NAME, TEXT } from '../../src/text/styles.ts';
import { tableBlock } from '../../src/text/table.ts';
import { FONTS } from '../fonts/loaded.ts';

const said = fc.oneof(
  fc.constantFrom('Ångström Żółć', 'jpgqy', 'W'.repeat(60), 'a '.repeat(40).trim(), '16 1/2 × 20', 'Ἀθῆναι'),
  fc.string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 60 }).filter((text) => text.trim() !== ''),
);

const ink = (items: readonly Item[]) => union(items.flatMap((item) => itemBox(item, WORD_PENS, FONTS) ?? []));
const textsOf = (block: Block): readonly string[] =>
  block.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));

/** Within the block but for the slack of sidebearings, which a text's box does not know. */
function expectInside(block: Block): void {
  expect(contains(grown({ x: 0, y: 0, width: block.width, height: block.height }, 1e-6), ink(block.items))).toBe(true);
}

describe('a block', () => {
  it('of lines is as large as its ink, however it is turned', () => {
    fc.assert(
      fc.property(
        fc.array(said, { minLength: 1, maxLength: 4 }),
        fc.constantFrom<Rotation>(0, 90, 180, 270),
        (texts, rotation) => {
          const block = labelBlock(
            texts.map((text, i) => ({ text, style: [TEXT, NAME, BOLD][i % 3]!, group: `g${i}` })),
            FONTS,
          );
          expect(block.groups).toHaveLength(block.items.length);
          const turned = turnedBlock(block, rotation, { x: 10, y: 20 });
          const found = ink(turned.items);
          const expected = boxAt(turned, { x: 10, y: 20 });
          for (const key of ['x', 'y', 'width', 'height'] as const) expect(found[key]).toBeCloseTo(expected[key], 6);
        },
      ),
    );
  });

  it('keeps the groups of its parts, beside and below one another', () => {
    const [a, b] = ['a', 'b'].map((text) => inGroup(line(text, TEXT, FONTS), text)) as [Block, Block];
    for (const both of [beside(a, b, 2), stacked([a, b], 2)]) expect(both.groups).toEqual(['a', 'b']);
    expect(joined({ width: 1, height: 1 }, [[line('a', TEXT, FONTS), { x: 0, y: 0 }]]).groups).toBeUndefined();
  });
});

describe('a paragraph', () => {
  it('holds its lines, none wider than it is, and all that was said', () => {
    fc.assert(
      fc.property(
        said,
        fc.double({ min: 8, max: 120, noNaN: true }),
        fc.integer({ min: 0, max: 5 }),
        (text, width, indent) => {
          const block = typed(text, width + indent, TEXT, FONTS, indent);
          expectInside(block);
          const bare = (words: string): string => words.normalize('NFC').replaceAll(/\s/gu, '');
          expect(bare(textsOf(block).join(''))).toBe(bare(text));
        },
      ),
    );
  });

  it('sets fractions as fractions, unless it is to be typed', () => {
    expect(textsOf(paragraph('16 1/2 in', 100, TEXT, FONTS))).toEqual(['16½ in']);
    expect(textsOf(typed('16 1/2 in', 100, TEXT, FONTS))).toEqual(['16 1/2 in']);
  });

  it('of a headline is as large as it goes in two lines', () => {
    const large = headline('Heron', 100, NAME, FONTS).items[0]!;
    expect(large.kind === 'text' && large.size).toBe(NAME.size);
    const long = headline('Heron, linocut, second state on grey paper, with a border of reeds', 100, NAME, FONTS);
    expect(long.items.length).toBeLessThanOrEqual(2);
    const whole = headline('Heron '.repeat(60).trim(), 100, NAME, FONTS);
    expect(textsOf(whole).join(' ')).toBe('Heron '.repeat(60).trim());
  });

  it('of one line is smaller where it must be, and cut only in the finest', () => {
    const small = fittedLine('Heron, linocut', widthOf('Heron, linocut', BOLD, FONTS) + 0.1, NAME, FONTS);
    expect(small.items[0]).toMatchObject({ text: 'Heron, linocut', size: TEXT.size });
    const cut = fittedLine('Heron, linocut', 8, NAME, FONTS);
    expect(cut.items[0]).toMatchObject({ size: FINE.size });
    expect(textsOf(cut)[0]).toMatch(/^H.*…$/u);
    expect(cut.width).toBeLessThanOrEqual(8);
  });

  it('stands level with others on the base line of its first line', () => {
    const row = level([
      [0, line('Stop', TEXT, FONTS)],
      [20, line('3 1/4', NAME, FONTS)],
      [50, paragraph('a long tail that goes on below', 20, LARGE, FONTS)],
    ]);
    const bases = row.items.slice(0, 3).map((item) => item.kind === 'text' && item.at.y);
    expect(bases).toEqual([row.base, row.base, row.base]);
    expectInside(row);
  });
});

describe('a table', () => {
  const table = {
    head: ['what', 'should be', 'measured'],
    rows: [
      ['diagonals, top mat', '25 5/8 in', ''],
      ['opening', '10 1/2 × 13 1/2 in', ''],
    ],
  };

  it('holds its cells, and has room to write in', () => {
    fc.assert(
      fc.property(fc.double({ min: 45, max: 180, noNaN: true }), fc.boolean(), (width, given) => {
        const block = tableBlock({ ...table, ...(given ? { widths: [2, 2, 1] } : {}) }, width, LARGE, FONTS);
        expectInside({ ...block, width: block.width + 0.1, height: block.height + 0.1 });
        expect(block.height).toBeGreaterThanOrEqual(2 * 7.5);
      }),
    );
  });

  it('is set smaller rather than with a word broken', () => {
    const words = [table.head, ...table.rows].flat().flatMap((cell) => fraction(cell).split(' '));
    const sizes = [60, 90, 180].map((width) => {
      const block = tableBlock({ ...table, widths: [1, 1, 1] }, width, LARGE, FONTS);
      for (const text of textsOf(block)) for (const word of text.split(' ')) expect(words).toContain(word);
      const first = block.items.find((item) => item.kind === 'text');
      return first?.kind === 'text' ? first.size : 0;
    });
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(sizes[2]).toBe(LARGE.size);
  });
});
