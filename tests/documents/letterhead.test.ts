import { describe, expect, it } from 'vitest';
import { make } from '../../src/index.ts';
import { readSheets, solvedSample, wordsOf } from './tickets.ts';

const SHOP = `shop: {name: Saltmarsh Print Room, address: [3 Quay Lane, Saltmarsh]}
units: mm
boards: {bone: {name: Bone, code: B-104, colour: "#e0d4bc", thickness: 1.4 mm, sheets: [810 x 1010], price: 9.5}}
`;
const JOB = `title: Terns
number: A-07
due: 2031-03-12
units: mm
mat: {outer: 500 x 400, layers: [{board: bone}]}
openings: [{name: First state, artwork: 120 x 150}, {artwork: 110 x 150}, {artwork: 110 x 150}]
`;
const solved = solvedSample({ name: 'terns', job: JOB, shop: SHOP });

it.each(['proof', 'intake'] as const)('%s has the shop’s name and address', async (output) => {
  const { pages } = await readSheets(output, [solved], { paper: 'letter' });
  const words = wordsOf(pages);
  for (const part of ['Saltmarsh Print Room', '3 Quay Lane']) expect(words).toContain(part);
});

it.each(['letter', 'a4'])(
  'the intake form on %s is one page, with a stub to tear off below a dashed line',
  async (paper) => {
    const { pages } = await readSheets('intake', [solved], { paper });
    expect(pages).toHaveLength(1);
    const [page] = pages;
    const tear = page!.lines.filter(({ dash, from, to }) => dash.length > 0 && Math.abs(to.x - from.x) > 150);
    expect(tear).toHaveLength(1);
    const below = page!.texts.filter(({ at }) => at.y > tear[0]!.from.y).map(({ text }) => text);
    for (const part of ['Claim stub', 'A-07', 'Terns', 'Wed 12 March 2031', 'Deposit, balance'])
      expect(below).toContain(part);
    expect(below.join(' ')).toContain('Saltmarsh Print Room, 3 Quay Lane');
    expect(page!.texts.filter(({ at }) => at.y < tear[0]!.from.y).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['Deposit', 'Balance', 'Our initials']),
    );
  },
);

it('labels have the board’s code and colour, the back every work of the group and who made it', async () => {
  const { pages, record } = await readSheets('labels', [solved], { paper: 'letter' });
  const words = wordsOf(pages);
  expect(words).toContain('Bone (B-104)');
  expect(pages[0]!.lines.some(({ fill }) => fill === '#e0d4bc')).toBe(true);
  const back = record.find(({ kind }) => kind === 'back')!;
  expect(back.what).toBe('Back: First state 120 × 150 mm, 2 × artwork 110 × 150 mm');
  for (const part of ['First state', '2 × artwork', 'Saltmarsh Print Room, 3 Quay Lane, Saltmarsh'])
    expect(words).toContain(part);
});

const OTHER = solvedSample({ name: 'gulls', job: JOB.replace('Terns', 'Gulls').replace('A-07', 'A-08'), shop: SHOP });

/** Of each place where the board is named: so many, at least, and each with the colour before it. */
it.each([
  ['ticket', [solved], 2],
  // Front list: two tickets and a round; two tickets of two each.
  ['ticket', [solved, OTHER], 7],
  ['blanks', [solved, OTHER], 1],
  // Fetched, headed, and on the sheet itself.
  ['stock', [solved], 3],
] as const)(
  '%s names the board by its code wherever it names it, and shows its colour',
  async (output, jobs, least) => {
    const { pages } = await readSheets(output, jobs, { paper: 'letter' });
    const words = wordsOf(pages);
    const named = words.match(/Bone(?! white)/gu) ?? [];
    expect(named.length).toBeGreaterThanOrEqual(least);
    expect(words.match(/Bone \(B-104\)/gu)).toHaveLength(named.length);
    const chips = pages.flatMap(({ lines }) => lines.filter(({ fill }) => fill === '#e0d4bc'));
    expect(chips.length).toBeGreaterThan(0);
  },
);

it.each(['ticket', 'blanks', 'stock'] as const)(
  'every part of %s that is headed by a board has a strip of its colour',
  async (output) => {
    const { pages } = await readSheets(output, [solved, OTHER], { paper: 'letter' });
    let headed = 0;
    for (const { texts, lines } of pages) {
      for (const { text, size, at } of texts) {
        if (size < 4 || text.includes(':') || !/^(?:Bone \(B-104\)|Cut top mat)/u.test(text)) continue;
        headed += 1;
        // Between the rule and the words, at the end of the rule.
        const strip = lines.filter(
          ({ fill, from }) => fill === '#e0d4bc' && at.y - from.y > 0 && at.y - from.y < 8 && from.x > at.x,
        );
        expect(strip.length).toBeGreaterThan(0);
        const low = Math.max(...strip.map(({ from }) => from.y));
        // No word of the line runs into it.
        for (const word of texts.filter((each) => Math.abs(each.at.y - at.y) < 0.1))
          expect(word.at.y - 0.72 * word.size).toBeGreaterThan(low - 0.05);
      }
    }
    expect(headed).toBeGreaterThan(0);
  },
);

it('prices are shown as a total where the shop wishes it, and moulding with its waste', async () => {
  const priced = (
    prices: string,
    waste: string,
  ) => `${SHOP}mouldings: {ash: {name: Ash, lip: 6, width: 20, price: {metre: 10}${waste}}}
prices: {labour: 20${prices}}
`;
  const framed = JOB.replace('outer: 500 x 400', 'frame: {inside: 503 x 403, moulding: ash}');
  const amounts = async (shop: string): Promise<readonly string[]> => {
    const { pages } = await readSheets('proof', [solvedSample({ name: 'framed', job: framed, shop })], {
      paper: 'letter',
    });
    return pages[0]!.texts.flatMap(({ text }) => (/^\d+\.\d\d$/.test(text) ? [text] : []));
  };
  // 2 × (0.531 + 0.431) m at 10 a metre; a tenth more of it is 21.16.
  const [plain, more, alone] = await Promise.all([
    amounts(priced('', '')),
    amounts(priced('', ', waste: 10')),
    amounts(priced(', show: total', '')),
  ]);
  expect(plain).toContain('19.24');
  expect(more).toContain('21.16');
  expect(alone).toHaveLength(1);
  expect(alone[0]).toBe(plain.at(-1));
});

describe('what was agreed on and paid', () => {
  const PRICED = `${SHOP}prices: {currency: "€", labour: 20}\n`;
  const with_ = (more: string, shop = PRICED) => solvedSample({ name: 'paid', job: `${JOB}${more}`, shop });
  const amountAfter = (words: string, label: string): string | undefined =>
    new RegExp(`${label} ((?:€\\u00a0)?\\d+\\.\\d\\d)`, 'u').exec(words)?.[1];

  it.each([
    // 500 × 400 of a sheet of 810 × 1010 at 9.50, and 20 for the labour.
    [
      'a deposit off the shop’s own sum',
      'price: {deposit: 20}\n',
      'Total',
      '€\u00a022.32',
      '€\u00a020.00',
      '€\u00a02.32',
    ],
    [
      'a deposit off all that are alike',
      'count: 3\nprice: {deposit: 20}\n',
      '3 alike',
      '€\u00a066.96',
      '€\u00a020.00',
      '€\u00a046.96',
    ],
    [
      'a price that was agreed on',
      'count: 3\nprice: {agreed: 60, deposit: 20}\n',
      'Agreed price',
      '€\u00a060.00',
      '€\u00a020.00',
      '€\u00a040.00',
    ],
  ])('%s', async (_, more, label, price, deposit, balance) => {
    const words = wordsOf((await readSheets('proof', [with_(more)], { paper: 'letter' })).pages);
    expect([label, 'Deposit', 'Balance'].map((each) => amountAfter(words, each))).toEqual([price, deposit, balance]);
    const form = wordsOf((await readSheets('intake', [with_(more)], { paper: 'letter' })).pages);
    expect(form).toContain(`Price ${price} Deposit ${deposit} Balance ${balance}`);
    expect(form).toContain(`Deposit, balance ${deposit}, ${balance}`);
  });

  it('without prices of the shop the deposit alone, and no balance of what nobody knows', async () => {
    const words = wordsOf(
      (await readSheets('proof', [with_('price: {deposit: 20}\n', SHOP)], { paper: 'letter' })).pages,
    );
    expect(amountAfter(words, 'Deposit')).toBe('20.00');
    for (const word of ['Balance', 'Total']) expect(words).not.toContain(word);
  });

  it('of several ways none has the one price or its deposit', async () => {
    const vary = { paper: 'letter', vary: 'openings[0].overlap=3,5' };
    const overlapped = with_('price: {agreed: 60, deposit: 20}\n');
    const words = wordsOf((await readSheets('proof', [overlapped], vary)).pages);
    expect(words).toContain('Total');
    for (const word of ['Agreed price', 'Deposit', 'Balance']) expect(words).not.toContain(word);
  });

  it.each(['proof', 'intake'] as const)('%s warns of a deposit that is more than the price', async (output) => {
    const made = await make(output, { jobs: [with_('price: {agreed: 10, deposit: 20}\n')] });
    expect(made.ok && made.warnings.map(({ code, path }) => [code, path])).toEqual([
      ['deposit-large', ['price', 'deposit']],
    ]);
  });
});
