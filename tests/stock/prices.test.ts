import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';
import { backingBlanks } from '../../src/stock/blanks.ts';
import { type PriceList, priceList } from '../../src/stock/prices.ts';

function priced(shop: string, mat: string, more = ''): PriceList {
  const solved = solveJob(`units: mm\nmat: {${mat}}\nopenings: [{size: 200 x 300}]\n${more}`, {
    shop: { text: `units: mm\n${shop}`, file: 'shop.yaml' },
  });
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const { mat: made, job, shop: read } = solved.value;
  return priceList(made, job, read)!;
}

const amounts = ({ lines }: PriceList) => Object.fromEntries(lines.map(({ what, amount }) => [what, amount]));

/** 400 × 500 in a frame whose lip is 6 and whose moulding is 20 wide: 428 × 528 outside. */
const FRAMED = 'frame: {nominal: 400 x 500, moulding: ash, glazing: clear, backing: grey}, layers: [{board: a}]';
const framed = (board: string, moulding: string, glazing: string, backing: string): string => `
boards: {a: {name: Bone, sheets: [800 x 1000], price: ${board}}}
mouldings: {ash: {name: Ash, lip: 6, width: 20, colour: "#aa8855", price: ${moulding}}}
glazing: {clear: {name: Clear, thickness: 2, price: ${glazing}}}
backing: {grey: {name: Grey, thickness: 2, price: ${backing}}}
prices: {}
`;

describe('what one piece costs, worked by hand', () => {
  it('by the square metre and by the metre round the outside of the frame', () => {
    const list = priced(framed('{squareMetre: 30}', '{metre: 12.5}', '{squareMetre: 40}', '{squareFoot: 2}'), FRAMED);
    expect(amounts(list)).toEqual({
      // 0.4 × 0.5 m are 0.2 m².
      'Top mat, Bone': 6,
      // The rebate is 3 mm larger than the mat: 2 × (0.431 + 0.531) m are 1.924 m.
      Ash: 24.05,
      Clear: 8,
      // 400 × 500 mm are 2.152782 square feet of 304.8 mm.
      Grey: 4.31,
    });
    expect(list.total).toBe(42.36);
  });

  it('by the foot, by the united inch and by the piece', () => {
    const list = priced(framed('8', '{foot: 3}', '{unitedInch: 0.5}', '{piece: 7}'), FRAMED);
    expect(amounts(list)).toEqual({
      // A quarter of the sheet.
      'Top mat, Bone': 2,
      // 1924 / 304.8 = 6.31234 feet.
      Ash: 18.94,
      // 900 / 25.4 = 35.43307 united inches.
      Clear: 17.72,
      Grey: 7,
    });
  });

  it('of a backing carries a price by its area to the plan of stock, and no other', () => {
    const areaPrice = (backing: string): unknown => {
      const solved = solveJob(`units: mm\nmat: {${FRAMED}}\nopenings: [{size: 200 x 300}]\n`, {
        shop: { text: `units: mm\n${framed('8', '{foot: 3}', '{piece: 1}', backing)}`, file: 'shop.yaml' },
      });
      if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
      const { mat, job } = solved.value;
      return backingBlanks([{ mat, job }], undefined).map(({ material }) => material.areaPrice);
    };
    expect(areaPrice('{squareMetre: 30}')).toEqual([{ amount: 30, per: 'squareMetre' }]);
    expect(areaPrice('{squareFoot: 2}')).toEqual([{ amount: 2, per: 'squareFoot' }]);
    expect(areaPrice('{piece: 7}')).toEqual([undefined]);
  });

  const taxed = (tax: string, labour = 120): PriceList =>
    priced(
      `boards: {a: {sheets: [800 x 1000], price: 0}}\nprices: {labour: ${labour}, tax: {name: VAT, ${tax}}}\n`,
      'outer: 400 x 500, layers: [{board: a}]',
      'count: 3\n',
    );

  it('with a tax that comes on top: 20 % of 120 are 24', () => {
    const { tax, total, all } = taxed('percent: 20');
    expect([tax, total, all]).toEqual([
      { what: 'VAT 20 %', amount: 24, included: false },
      144,
      { count: 3, total: 432 },
    ]);
  });

  it('with a tax that is in the prices already: 20 of 120, and the total stays', () => {
    const { tax, total, all } = taxed('percent: 20, included: true');
    expect([tax, total, all]).toEqual([
      { what: 'VAT 20 %', amount: 20, included: true },
      120,
      { count: 3, total: 360 },
    ]);
    // 7.7 % in 99.95: 99.95 × 7.7 / 107.7 = 7.1458.
    expect(taxed('percent: 7.7, included: true', 99.95).tax!.amount).toBe(7.15);
  });
});
