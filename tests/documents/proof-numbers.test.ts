import { describe, expect, it } from 'vitest';
import { type Report, solveJob } from '../../src/index.ts';
import { priceList } from '../../src/stock/prices.ts';
import { type ReadPage, type ReadText, readPdf } from '../readers/pdf-lines.ts';
import { numbersIn, PIECES, proofOf } from './proofs.ts';

const MM: Readonly<Record<string, number>> = { in: 25.4, mm: 1, cm: 10 };
/** What a customer reads to: sixteenths, whole millimetres. A part of a chain may be off by as much, so that the chain adds up. */
const GRAIN: Readonly<Record<string, number>> = { in: 25.4 / 16, mm: 1, cm: 1 };
/** Less than this nobody calls rounded. */
const EXACT = 0.002;

/** What stands below each word of that kind, in the order of the page. */
function below(page: ReadPage, word: string): readonly string[] {
  return page.texts
    .filter(({ text }) => text === word || text.startsWith(`${word} `))
    .flatMap(({ at }) => {
      const under = page.texts.filter((each) => Math.abs(each.at.x - at.x) < 0.01 && each.at.y > at.y);
      return under.sort((a, b) => a.at.y - b.at.y).slice(0, 1);
    })
    .map(({ text }) => text);
}

const sidesOf = ({ top, right, bottom, left }: Report['border']): number[] => [top, right, bottom, left];

/** From each opening to the next one on either side, or to the edge of the mat. */
function steps(spans: readonly (readonly number[])[], whole: number): readonly number[] {
  const made = spans.flatMap(([from, to]) => [
    from! - Math.max(0, ...spans.map(([, end]) => end!).filter((end) => end <= from! + 1e-6)),
    Math.min(whole, ...spans.map(([start]) => start!).filter((start) => start >= to! - 1e-6)) - to!,
  ]);
  return made.filter((length) => length > 1e-6);
}

describe.each(PIECES)('the proof of $name', async (each) => {
  const made = await proofOf(each, { dimensions: true, date: '12 March 2031' });
  const page = (await readPdf(made.pdf)).pages[0]!;
  const { report } = made;
  const [mm, half] = [MM[report.units]!, GRAIN[report.units]!];
  const near = (read: number, wanted: number): void =>
    expect(Math.abs(read * mm - wanted)).toBeLessThanOrEqual(half + 1e-6);
  const isSize = (text: string | undefined, wanted: { width: number; height: number }): void => {
    expect(text).toBeDefined();
    const numbers = numbersIn(text!);
    expect(numbers).toHaveLength(2);
    near(numbers[0]!, wanted.width);
    near(numbers[1]!, wanted.height);
    const off = Math.max(Math.abs(numbers[0]! * mm - wanted.width), Math.abs(numbers[1]! * mm - wanted.height));
    expect(text!.startsWith('≈')).toBe(off > EXACT);
    for (const number of numbers) expect((number * mm) / half).toBeCloseTo(Math.round((number * mm) / half), 6);
    expect(text).toMatch(new RegExp(` ${report.units}$`));
  };

  it('says the sizes that check says', () => {
    isSize(below(page, 'Mat')[0], report.outer);
    // Openings that are alike are told once.
    const alike = new Map(
      report.openings.map((opening) => {
        const { layers, sight, artwork } = opening;
        const sizes = [layers[0]!.face, sight, artwork?.size].map(
          (s) => s && [s.width, s.height].map((n) => n.toFixed(3)),
        );
        return [JSON.stringify(sizes), opening];
      }),
    );
    const openings = [...alike.values()];
    expect(below(page, 'Opening')).toHaveLength(openings.length);
    openings.forEach((opening, i) => {
      isSize(below(page, 'Opening')[i], opening.layers[0]!.face);
      isSize(below(page, 'Seen through it')[i], opening.sight);
    });
    const works = openings.flatMap(({ artwork }) => (artwork === undefined ? [] : [artwork]));
    works.forEach(({ size }, i) => {
      isSize(below(page, 'Artwork')[i], size);
    });
    if (report.openings.length === 1) {
      const numbers = numbersIn(below(page, 'Borders')[0]!);
      for (const side of sidesOf(report.border)) {
        expect(numbers.some((number) => Math.abs(number * mm - side) <= half + 1e-6)).toBe(true);
      }
      for (const number of numbers) {
        expect(sidesOf(report.border).some((side) => Math.abs(number * mm - side) <= half + 1e-6)).toBe(true);
      }
    }
  });

  it('measures the same beside the piece', () => {
    const small = besidePiece(page);
    const read = small.flatMap(({ text }) => numbersIn(text).map((number) => number * mm));
    const wanted = [
      report.outer.width,
      report.outer.height,
      ...report.openings.flatMap(({ sight, layers }) => [
        ...[sight.width, sight.height, layers[0]!.face.width, layers[0]!.face.height],
      ]),
      ...steps(
        report.openings.map(({ layers }) => layers[0]!.face).map(({ x, width }) => [x, x + width]),
        report.outer.width,
      ),
      ...steps(
        report.openings.map(({ layers }) => layers[0]!.face).map(({ y, height }) => [y, y + height]),
        report.outer.height,
      ),
    ];
    for (const length of wanted) expect(read.some((number) => Math.abs(number - length) <= half + 1e-6)).toBe(true);
    for (const number of read) expect(wanted.some((length) => Math.abs(number - length) <= half + 1e-6)).toBe(true);
  });

  it('every row of distances from edge to edge adds up to the whole as printed', () => {
    const small = besidePiece(page);
    for (const [turn, line, along] of [
      [0, 'y', 'x'],
      [270, 'x', 'y'],
    ] as const) {
      const own = small.filter((text) => text.turn === turn);
      const whole = own.find(({ text }) => text.endsWith(` ${report.units}`));
      if (whole === undefined) continue;
      // The first row is a chain where no two openings overlap, seen along the axis.
      const rows = [...new Set(own.filter((each) => each !== whole).map(({ at }) => at[line].toFixed(1)))];
      const first = rows.map(Number).sort((a, b) => a - b)[0]!;
      const chain = own.filter((each) => each !== whole && Math.abs(each.at[line] - first) < 0.1);
      const faces = report.openings.map(({ layers }) => layers[0]!.face);
      const spans = faces.map((face) => (along === 'x' ? [face.x, face.width] : [face.y, face.height]));
      const distinct = [...new Map(spans.map((span) => [span.map((n) => n!.toFixed(3)).join(), span])).values()];
      if (chain.length !== 2 * distinct.length + 1) continue;
      const sum = chain.reduce((total, { text }) => total + numbersIn(text)[0]!, 0);
      expect(sum).toBeCloseTo(numbersIn(whole.text)[0]!, 6);
    }
  });

  it('stands at the scale that it says, which the bar proves', () => {
    const said = page.texts.find(({ text }) => text.startsWith('Scale 1 : '))!;
    expect(Number(said.text.slice('Scale 1 : '.length))).toBe(made.report.proof!.scale);
    const cells = page.lines.filter(({ widthPt, stroke }) => stroke === '#262626' && Math.abs(widthPt - 0.397) < 0.002);
    const xs = cells.flatMap(({ from, to }) => [from.x, to.x]);
    const end = page.texts.find(
      ({ text, at }) =>
        text !== '0' &&
        at.y > said.at.y &&
        at.y < said.at.y + 8 &&
        at.x > said.at.x - 20 &&
        / (?:in|mm|cm)$/.test(text),
    )!;
    const stands = numbersIn(end.text)[0]! * mm;
    expect((Math.max(...xs) - Math.min(...xs)) * made.report.proof!.scale).toBeCloseTo(stands, 3);
  });

  it('says title, customer, date and boards, in the order of reading', () => {
    const words = page.texts.map(({ text }) => text).join(' ');
    const order = [report.title.split(' ')[0]!, 'Mat', 'Top mat', 'Approved', 'Colours on a screen'];
    let from = 0;
    for (const word of order) {
      const at = words.indexOf(word, from);
      expect(at, word).toBeGreaterThanOrEqual(from);
      from = at;
    }
    expect(words).toContain('Proof, 12 March 2031');
  });
});

it('prices are those of the record, and add up as printed', async () => {
  const shop = `
boards: {a: {name: Bone, thickness: 1.4 mm, sheets: [32 x 40 in], price: 9.99}, b: {name: Slate, thickness: 1.4 mm, price: {squareFoot: 1.37}}}
mouldings: {ash: {name: Ash, lip: 1/4, width: 1, colour: "#aa8855", price: {foot: 4.21}}}
glazing: {clear: {name: Clear glass, thickness: 2 mm, price: {unitedInch: 0.333}}}
prices: {currency: "£", labour: 25.5, unitedInch: 0.111, tax: {name: VAT, percent: 20}}
`;
  const job = `
count: 3
mat: {frame: {nominal: 16 x 20, moulding: ash, glazing: clear}, layers: [{board: a}, {board: b, reveal: 1/4}]}
openings: [{artwork: 10 x 13}]
`;
  const made = await proofOf({ job, file: 'job.yaml', shop });
  const page = (await readPdf(made.pdf)).pages[0]!;
  const amounts = page.texts
    .filter(({ text }) => /^(?:£\u00a0)?\d+\.\d\d$/u.test(text))
    .map(({ text }) => Number(text.replace(/^£\s/u, '')));
  // Written out by hand: share of the sheet, area, running length of the outside, united inches.
  const lines = [
    (9.99 * 16 * 20) / (32 * 40),
    (1.37 * 15.75 * 19.75) / 144,
    0.111 * 36,
    // Of the rebate, an eighth larger than the mat.
    (4.21 * 2 * (17.625 + 21.625)) / 12,
    0.333 * 36,
    25.5,
  ].map((amount) => Math.round(amount * 100) / 100);
  const net = lines.reduce((sum, amount) => sum + amount, 0);
  const tax = Math.round(net * 20) / 100;
  const total = Math.round((net + tax) * 100) / 100;
  expect(amounts).toEqual([...lines, tax, total, Math.round(total * 300) / 100]);
});

it('what the shop gives no price for is named, not passed over', async () => {
  const shop = 'boards: {a: {name: Bone}}\nmouldings: {ash: {name: Ash, width: 1}}\nprices: {labour: 25}\n';
  const job = 'mat: {frame: {nominal: 16 x 20, moulding: ash}, layers: [{board: a}]}\nopenings: [{artwork: 10 x 13}]\n';
  const made = await proofOf({ job, file: 'job.yaml', shop });
  const words = (await readPdf(made.pdf)).pages[0]!.texts.map(({ text }) => text);
  expect(words).toContain('No price yet for Top mat, Bone; Ash');
  expect(words).toContain('not known yet');
  expect(words.filter((text) => /\d+\.\d\d$/.test(text))).toEqual(['25.00']);
  const priced = await proofOf({
    job,
    file: 'job.yaml',
    shop: shop.replace('{name: Bone}', '{name: Bone, price: 8, sheets: [32 x 40]}'),
  });
  const said = (await readPdf(priced.pdf)).pages[0]!.texts.map(({ text }) => text);
  expect(said).toContain('Not in the total: Ash');
  expect(said).toContain('27.00');
});

it('a shop without prices shows none, though its boards have theirs', async () => {
  const shop = 'boards: {a: {name: Bone, thickness: 1.4 mm, sheets: [32 x 40 in], price: 9.99}}\n';
  const job = 'mat: {outer: 16 x 20, layers: [{board: a}]}\nopenings: [{artwork: 10 x 13}]\n';
  const made = await proofOf({ job, file: 'job.yaml', shop });
  const words = (await readPdf(made.pdf)).pages[0]!.texts.map(({ text }) => text);
  expect(words).not.toContain('Total');
});

it('a sheet’s own price goes before that of its board', async () => {
  const shop = `boards: {a: {sheets: [{size: 32 x 40, price: 8}], price: 9}}\nprices: {boards: sheet}\n`;
  const solved = solveJob('mat: {outer: 16 x 20, border: 3, layers: [{board: a}]}\nopenings: [{}]\n', {
    shop: { text: shop, file: 'shop.yaml' },
  });
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const { mat, job, shop: read } = solved.value;
  expect(priceList(mat, job, read)).toMatchObject({ total: 8 });
});

/** Numbers of dimension lines: fine, nothing but a number and its unit, above all that is said in words. */
function besidePiece({ texts }: ReadPage): readonly ReadText[] {
  const said = Math.min(...texts.filter(({ text }) => text.startsWith('Scale 1 : ')).map(({ at }) => at.y));
  return texts.filter(
    ({ text, size, at }) =>
      Math.abs(size - 2.5) < 0.01 && at.y < said - 1 && /^(?:≈\s)?[^A-Za-z×≈]+(?:\s(?:in|mm|cm))?$/u.test(text),
  );
}

describe('boards by the sheet', () => {
  const priced = (shop: string, count: number, outer = '16 x 20', layers = '[{board: a}]', more = '') => {
    const solved = solveJob(
      `count: ${count}\nmat: {outer: ${outer}, border: 3, layers: ${layers}}\nopenings: [{}]\n${more}\n`,
      {
        shop: { text: shop, file: 'shop.yaml' },
      },
    );
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const { mat, job, shop: read } = solved.value;
    return priceList(mat, job, read)!;
  };
  const sheet = 'boards: {a: {sheets: [32 x 40], price: 9.50}}\nprices: {boards: sheet}\n';

  it('count the sheets that this job alone begins: four of 16 × 20 fill one, once trimmed it holds two', () => {
    expect(priced(sheet, 4).lines[0]!.amount).toBe(2.38);
    // A quarter inch off each edge leaves 31 1/2 × 39 1/2: one column of 16, 15 1/2 beside it, so two blanks a sheet.
    expect(priced(`${sheet}stock: {trim: 1/4}\n`, 4).lines[0]!.amount).toBe(4.75);
  });

  it('charge cuts their width: three strips of 32 × 13 1/4 need 39 3/4, and two saw cuts of 1/8', () => {
    expect(priced(`${sheet}stock: {kerf: 1/8}\n`, 3, '32 x 13 1/4').lines[0]!.amount).toBe(3.17);
    expect(priced(`${sheet}stock: {kerf: 1/4}\n`, 3, '32 x 13 1/4').lines[0]!.amount).toBe(6.33);
  });

  it('do not depend on the day: neither on the shelf nor on what is left', () => {
    const day = `boards: {a: {sheets: [{size: 32 x 40, count: 0}], price: 9.50}}\nprices: {boards: sheet}
shelf: [{id: S1, board: a, size: 20 x 30}]\n`;
    expect(priced(day, 4)).toEqual(priced(sheet, 4));
  });

  it('are whole ones where the board is priced by area too: 1 in each square foot of 32 × 40 is 8.89', () => {
    const byArea = sheet.replace('price: 9.50', 'price: {squareFoot: 1}');
    expect(priced(byArea, 1).lines[0]!.amount).toBe(8.89);
    expect(priced(byArea.replace('boards: sheet', 'boards: share'), 1).lines[0]!.amount).toBe(2.22);
  });

  it('are shared by layers of the same board, by area', () => {
    const { lines } = priced(
      sheet,
      2,
      '16 x 20',
      '[{board: a}, {board: a, reveal: 1/4, trimBack: 0}]',
      'bench: {stack: apart}',
    );
    expect(lines.map(({ amount }) => amount)).toEqual([2.38, 2.38]);
  });
});
