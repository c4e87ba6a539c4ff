import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { readShop } from '../../src/shop/read-shop.ts';

const shop = (text: string) => {
  const made = readShop({ text, file: 'shop.yaml' });
  if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join());
  return made.value;
};

describe('prices of a shop', () => {
  it('are by the sheet, by area, by length, by the united inch or by the piece', () => {
    const { boards, mouldings, glazing, frames } = shop(`
boards: {a: {price: 9.5}, b: {price: {sheet: 8}}, c: {price: {squareMetre: 14}}}
mouldings: {ash: {lip: 1/4, width: 3/4, colour: "#c9a77a", price: {foot: 4.2}}}
frames: {ready: {nominal: 16 x 20, moulding: ash}}
glazing: {clear: {thickness: 2 mm, price: {unitedInch: 0.3}}}
`);
    expect(boards.get('a')).toMatchObject({ price: 9.5 });
    expect(boards.get('b')).toMatchObject({ price: 8 });
    expect(boards.get('c')).toMatchObject({ areaPrice: { amount: 14, per: 'squareMetre' } });
    expect(boards.get('c')).not.toHaveProperty('price');
    expect(mouldings.get('ash')).toMatchObject({
      width: 19.049999999999997,
      colour: '#c9a77a',
      price: { amount: 4.2, per: 'foot' },
    });
    expect(frames.get('ready')).toMatchObject({ colour: '#c9a77a', price: { amount: 4.2, per: 'foot' } });
    expect(glazing.get('clear')!.price).toEqual({ amount: 0.3, per: 'unitedInch' });
  });

  it('have defaults', () => {
    expect(shop('prices: {tax: {percent: 7.7}}').prices).toEqual({
      decimals: 2,
      boards: 'share',
      show: 'lines',
      tax: { name: 'Tax', percent: 7.7, included: false },
    });
    expect(shop('units: in').prices).toBeUndefined();
  });

  it.each([
    ['boards: {a: {price: {}}}', 'price-one', /no key/],
    ['boards: {a: {price: {sheet: 1, squareFoot: 2}}}', 'price-one', /2 keys/],
    ['boards: {a: {price: {metre: 1}}}', 'price-per', /a price for each metre/],
    ['boards: {a: {price: {squarefoot: 1}}}', 'price-per', /squarefoot/],
    ['boards: {a: {price: {sheet: -1}}}', 'number-range', /at least 0/],
    ['boards: {a: {price: "9,50"}}', 'value-kind', /a price/],
    ['prices: {tax: {name: VAT}}', 'key-missing', /percent/],
    ['prices: {tax: {percent: 120}}', 'number-range', /at most 100/],
    ['prices: {boards: whole}', 'value-unknown', /share, sheet/],
    ['mouldings: {a: {colour: brown}}', 'colour-unreadable', /brown/],
  ])('%s is refused', (text, code, words) => {
    const made = readShop({ text, file: 'shop.yaml' });
    expect(made.ok).toBe(false);
    if (made.ok) return;
    expect(made.problems.map((problem) => problem.code)).toEqual([code]);
    expect(`${made.problems[0]!.message}; ${made.problems[0]!.hint}`).toMatch(words);
  });
});

it('an opening names its picture, a frame its width and colour', () => {
  const text = `
mat: {frame: {inside: 16 x 20, moulding: ash, width: 1}}
openings: [{artwork: 8 x 10, picture: heron.png}]
`;
  const shopText = 'mouldings: {ash: {width: 3/4, colour: "#c9a77a"}}';
  const made = readJob({ text, file: 'job.yaml', shopText });
  expect(made.ok && made.value.job.openings[0]!.picture).toBe('heron.png');
  expect(made.ok && made.value.job.mat.frame).toMatchObject({ width: 25.4, colour: '#c9a77a' });
});
