import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StockRecord } from '../../src/documents/stock/record.ts';
import { type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { carriedOut } from './carried-out.ts';
import { LITTLE, MONDAY, MONDAY_SHOP, madeDay } from './stock-days.ts';
import { inMm, lengthsIn, MM_PER_POINT } from './tickets.ts';

const MM_PER_INCH = 25.4;

const near = (a: number, b: number, off = 1e-6): boolean => Math.abs(a - b) <= off;
type Layout = StockRecord['boards'][number]['layouts'][number];

/** Every sheet carried out as it is printed yields its blanks and offcuts, no more and no less. */
function checkCarriedOut(record: StockRecord, longestCut = Number.POSITIVE_INFINITY): void {
  for (const { layouts, kerf } of record.boards) {
    for (const layout of layouts) {
      const { came, left, longest } = carriedOut(layout, layout.stops, kerf);
      const uncut = layout.cuts === 0;
      expect(left).toEqual(uncut ? ['A'] : []);
      expect(longest).toBeLessThanOrEqual(longestCut + 1e-6);
      if (uncut) continue;
      const lines = (parts: readonly { readonly name: string; readonly width: number; readonly height: number }[]) =>
        parts.map(({ name, width, height }) => `${name} ${width.toFixed(4)} ${height.toFixed(4)}`).sort();
      const blanks = layout.pieces.map(({ key, width, height }) => ({ name: key, width, height }));
      const cut = came
        .filter(({ name }) => !/^(?:waste|trim|dust|offcut )/.test(name))
        .map((each) => ({ ...each, name: each.name.split(' ')[0]! }));
      expect(lines(cut)).toEqual(lines(blanks));
      const kept = layout.offcuts.map(({ marks, width, height }) => ({ name: marks.join(), width, height }));
      const marked = came
        .filter(({ name }) => name.startsWith('offcut '))
        .map((each) => ({ ...each, name: [...each.name.matchAll(/S\d+/g)].map(([mark]) => mark).join() }));
      expect(lines(marked)).toEqual(lines(kept));
    }
  }
}

/** Each copy of each blank lies on exactly one sheet, and what drops out is used after its mat. */
function checkCounts(record: StockRecord, blanks: number): void {
  const laid = record.boards.flatMap(({ layouts }) =>
    layouts.map(({ pieces, numbers }) => pieces.length * numbers.length),
  );
  expect(laid.reduce((sum, count) => sum + count, 0)).toBe(blanks);
  expect(record.boards.reduce((sum, board) => sum + board.blanks, 0)).toBe(blanks);
  const numbers = record.boards.flatMap(({ layouts }) => layouts.flatMap((layout) => layout.numbers));
  expect([...numbers].sort((a, b) => a - b)).toEqual(numbers.map((_, i) => i + 1));
  // What drops out of mats is cut after all else, by then every mat over it is off.
  const laidOut = record.boards.flatMap(({ layouts }) => layouts);
  const kinds = laidOut.sort((a, b) => a.numbers[0]! - b.numbers[0]!).map(({ from }) => from.kind === 'fallout');
  expect(kinds).toEqual([...kinds].sort((a, b) => Number(a) - Number(b)));
  for (const board of record.boards) {
    expect(near(board.yield + board.kept + board.waste, 1, 1e-9)).toBe(true);
    const news = board.layouts.filter(({ from }) => from.kind === 'sheet');
    expect(news.reduce((sum, layout) => sum + layout.numbers.length, 0)).toBe(board.sheets);
    const takes = board.first === 'cost' ? board.cost! : board.sheets;
    expect(board.bound.value).toBeLessThanOrEqual(takes + 1e-9);
    expect(board.verdict === `optimal in ${board.first}`).toBe(near(board.bound.value, takes));
    let dropped = new Map<string, number>();
    for (const { from, numbers: own, pieces } of board.layouts) {
      if (from.kind === 'fallout') {
        const there = dropped.get(from.of) ?? 0;
        expect(there).toBeGreaterThanOrEqual(own.length);
        dropped = new Map([...dropped, [from.of, there - own.length]]);
      }
      for (const { title, name } of pieces) {
        const of = `${title}, ${name}`;
        dropped.set(of, (dropped.get(of) ?? 0) + own.length);
      }
    }
  }
}

/** The pages of a layout: the first names its sheets, others go on with it. */
function pagesOf(pages: readonly ReadPage[], { numbers }: Layout): readonly ReadPage[] {
  const name = numbers.length === 1 ? `Sheet ${numbers[0]}` : `Sheets ${numbers[0]} to ${numbers.at(-1)}`;
  return pages.filter(({ texts }) => texts[0]!.text === name || texts[0]!.text.startsWith(`${name}, `));
}

/** Read at arm's length: no smaller than 20 points. */
const STOP = 20 * MM_PER_POINT;

function checkPage(pages: readonly ReadPage[], layout: Layout, record: StockRecord): void {
  const own = pagesOf(pages, layout);
  expect(own.length).toBeGreaterThan(0);
  const texts = own.flatMap((page) => page.texts);
  const words = texts
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/[ \n]+/g, ' '); // but not the thin space of a fraction
  // Stops in the order of work, each with its cuts, white on black.
  const stops = texts.filter(({ size, text }) => size >= STOP && /^[\d ./]+$/.test(text));
  expect(stops.map(({ text }) => text)).toEqual(layout.stops.map(({ reading }) => reading.text));
  layout.stops.forEach(({ stop, reading }) => {
    const off = Math.abs(inMm(reading.text, reading.unit) - stop);
    expect(off).toBeLessThanOrEqual(reading.sense === 'exact' ? 0.0501 : record.graduation / 2 + 1e-6);
    if (reading.decimal !== undefined)
      expect(near(inMm(reading.decimal, reading.unit), stop, reading.unit === 'mm' ? 0.005001 : 0.0128)).toBe(true);
  });
  const discs = texts
    .filter(({ fill, text }) => fill === '#ffffff' && /^\d+$/.test(text))
    .map(({ text }) => Number(text));
  const twice = Array.from({ length: layout.cuts }, (_, i) => [i + 1, i + 1]).flat();
  expect(discs.sort((a, b) => a - b)).toEqual(twice);
  // Sizes: of the sheet, of each kind of blank, of what is kept.
  const { width, height } = layout;
  const half = record.graduation / 2 + 1e-6;
  const sized = (text: string, size: { readonly width: number; readonly height: number }): boolean => {
    const [w, h] = lengthsIn(text).slice(-2);
    return near(w!, size.width, half) && near(h!, size.height, half);
  };
  const lead = /(?:new sheet|from the shelf|trim it to),? ([^;,]*? (?:in|mm|cm))\b/.exec(words)![1]!;
  expect(sized(lead, { width, height })).toBe(true);
  for (const { marks, ...offcut } of layout.offcuts) {
    const said = new RegExp(`offcut ${marks.join(', ')}, ([^,]*? (?:in|mm|cm))`).exec(words)![1]!;
    expect(sized(said, offcut)).toBe(true);
  }
  for (const piece of layout.pieces) {
    expect(texts.some(({ text }) => text === piece.key)).toBe(true);
    expect(
      texts.some(
        ({ text }) =>
          / × .* (?:in|mm|cm)$/.test(text) &&
          sized(text, piece.turned ? { width: piece.height, height: piece.width } : piece),
      ),
    ).toBe(true);
  }
}

describe('a day at the print room', () => {
  it.each([
    ['letter', {}, MONDAY_SHOP],
    ['a4', { fallouts: true, backing: 'plain-2' }, MONDAY_SHOP],
    ['a4', { fallouts: true }, MONDAY_SHOP.replace('  trim:', '  kerf: 1/8\n  trim:')],
  ] as const)('says on %s with %j what the record says, and can be carried out', async (paper, options, shop) => {
    const { files, record } = await madeDay(MONDAY, shop, { paper, ...options });
    const { pages } = await readPdf(files[0]!.bytes);
    for (const { layouts } of record.boards) for (const layout of layouts) checkPage(pages, layout, record);
    checkCarriedOut(record);
    checkCounts(record, 'backing' in options ? 44 : 25);
    const words = pages[0]!.texts.map(({ text }) => text);
    for (const { yield: share, kept, waste, cost, sheets, verdict, first, gap } of record.boards) {
      const proof = first === 'cost' && gap > 0 ? `at most £\u00a0${gap.toFixed(2)}` : verdict;
      expect(words.some((text) => text.startsWith(proof))).toBe(true);
      for (const part of [share, kept, waste]) expect(words).toContain(`${(100 * part).toFixed(1)} %`);
      expect(words).toContain(`£\u00a0${cost!.toFixed(2)}`);
      expect(words).toContain(`${sheets}`);
    }
    const marks = record.boards.flatMap(({ layouts }) =>
      layouts.flatMap(({ offcuts }) => offcuts.flatMap((o) => o.marks)),
    );
    for (const mark of marks) expect(words.some((text) => text.startsWith(`${mark}: `))).toBe(true);
  });

  it('asks for no stop that the cutter has not: such cuts are marked by rule, from the same edge', async () => {
    const shop = MONDAY_SHOP.replace(/ {2}trim: 0.*/, '  longestStop: 30\n  shortestStop: 9\n  trim: 1/4');
    const { files, record } = await madeDay(MONDAY, shop, { paper: 'letter' });
    checkCarriedOut(record);
    const groups = record.boards.flatMap(({ layouts }) => layouts.flatMap(({ stops }) => stops));
    const marked = groups.filter(({ byRule }) => byRule);
    expect(marked.length).toBeGreaterThan(2);
    for (const { stop, byRule, rows } of groups) {
      expect(byRule).toBe(stop > 30 * MM_PER_INCH + 1e-6 || stop < 9 * MM_PER_INCH - 1e-6);
      for (const { lay } of rows) expect(/edge to the stop$/.test(lay) && byRule).toBe(false);
    }
    const words = (await readPdf(files[0]!.bytes)).pages.flatMap(({ texts }) => texts.map(({ text }) => text));
    expect(words.filter((text) => text === 'Mark').length).toBe(marked.length);
  });

  it('cuts a sheet as it was measured, and trims what is over', async () => {
    const shop = MONDAY_SHOP.replace('{size: 32 x 40, price', '{size: 32 x 40, measured: 32 1/16 x 40 1/8, price');
    const { record } = await madeDay(MONDAY, shop, { paper: 'letter' });
    checkCarriedOut(record);
    const bone = record.boards.find(({ board }) => board === 'bone-4')!;
    expect(bone.fetch[0]!.sheet).toBe('32 × 40 in');
    const sheet = bone.layouts.find(({ from }) => from.of === '32 × 40 in')!;
    expect([sheet.width / MM_PER_INCH, sheet.height / MM_PER_INCH]).toEqual([
      expect.closeTo(32.0625, 9),
      expect.closeTo(40.125, 9),
    ]);
  });

  it('gives the same bytes each time', async () => {
    const day = { 'samphire.yaml': MONDAY['samphire.yaml']! };
    const [one, two] = [await madeDay(day, MONDAY_SHOP), await madeDay(day, MONDAY_SHOP)];
    expect(two).toEqual(one);
  });
});

const length = fc.integer({ min: 6 * 16, max: 20 * 16 }).map((sixteenths) => sixteenths / 16);
const job = fc.record({
  width: length,
  height: length,
  count: fc.integer({ min: 1, max: 4 }),
  double: fc.boolean(),
  metric: fc.boolean(),
});
const shop = fc.record({
  trim: fc.constantFrom('0', '1/4', '{left: 1/8, top: 3/8}'),
  kerf: fc.constantFrom('0', '1/8', '3 mm'),
  least: fc.constantFrom('4 x 4', '8 x 10', '20 x 20'),
  longest: fc.constantFrom('', 'longestCut: 42, '),
  sheets: fc.constantFrom('[32 x 40]', '[40 x 60, 32 x 40]', '[{size: 32 x 40, count: 2}, 26 x 38]'),
  directional: fc.boolean(),
  fallouts: fc.boolean(),
});

describe('days at random', () => {
  it('can be carried out as they are printed, and have every blank once', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(job, { minLength: 1, maxLength: 4 }), shop, async (jobs, how) => {
        const text = `boards: {x: {name: X, sheets: ${how.sheets}, directional: ${how.directional}}, y: {name: Y, sheets: ${how.sheets}}}
shelf: [{id: S9, board: y, size: 12 x 30}]
stock: {${how.longest}trim: ${how.trim}, kerf: ${how.kerf}, leastOffcut: ${how.least}}
`;
        const files = jobs.map(({ width, height, count, double, metric }, i) => {
          const unit = metric ? ' mm' : ' in';
          const show = (inches: number): string => (metric ? `${Math.round(inches * 25.4)}` : `${inches}`);
          const layers = double ? '[{board: x}, {board: y, reveal: 1/4 in}]' : '[{board: y}]';
          const size = `${show(width)} x ${show(height)}${unit}`;
          return [
            `${i}.yaml`,
            `title: Job ${i}\ncount: ${count}\nmat: {outer: ${size}, border: 2 in, layers: ${layers}}\nopenings: [{}]\n`,
          ];
        });
        const { record } = await madeDay(Object.fromEntries(files), text, {
          fallouts: how.fallouts,
          effort: LITTLE / 5,
        });
        checkCarriedOut(record, how.longest === '' ? undefined : 42 * 25.4);
        checkCounts(
          record,
          jobs.reduce((sum, each) => sum + each.count * (each.double ? 2 : 1), 0),
        );
      }),
      { numRuns: 20, seed: 11 },
    );
  });
});
