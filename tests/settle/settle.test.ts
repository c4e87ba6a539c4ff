import { describe, expect, it } from 'vitest';
import { right } from '../../src/geometry/box.ts';
import { solveJob } from '../../src/index.ts';
import { settle } from '../../src/settle/settle.ts';
import type { Settled } from '../../src/settle/settled.ts';
import { readShop } from '../../src/shop/read-shop.ts';
import { FONTS } from '../fonts/loaded.ts';

const SHOP = 'units: mm\nprinters: {office: {x: 0.99, y: 1.002, margin: {top: 5, right: 6, bottom: 15, left: 7}}}\n';
const TWO = `${SHOP.trimEnd().slice(0, -1)}, plotter: {x: 1, y: 1}}\n`;
const job = (print: string) => `units: mm\nmat: {outer: 300 x 400}\nopenings: [{size: 100 x 150}]\nprint: {${print}}\n`;

type Request = Omit<Parameters<typeof settle>[0], 'job' | 'shop' | 'fonts'>;

function question(print: string | undefined, shop: string, more: Partial<Request> = {}) {
  const uses = ['full scale'] as const;
  if (print === undefined) {
    const read = readShop({ text: shop, file: 'shop.yaml' });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return settle({ shop: read.value, uses, fonts: FONTS, ...more });
  }
  const solved = solveJob(job(print), { shop: { text: shop, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  return settle({ job: solved.value.job, shop: solved.value.shop, uses, fonts: FONTS, ...more });
}

function settled(...options: Parameters<typeof question>): Settled {
  const made = question(...options);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const refused = (...options: Parameters<typeof question>) => {
  const made = question(...options);
  return made.ok ? [] : made.problems.map(({ code }) => code);
};

describe('the printer', () => {
  const printer = (print: string | undefined, shop: string, options?: string) =>
    settled(print, shop, options === undefined ? {} : { options: { printer: options } }).printer?.id;

  it.each([
    ['the only one of the shop', '', SHOP, undefined, 'office'],
    ['the only one, without a job', undefined, SHOP, undefined, 'office'],
    ['none of several', '', TWO, undefined, undefined],
    ['none of none', '', 'units: mm\n', undefined, undefined],
    ['the one that the job names', 'printer: plotter', TWO, undefined, 'plotter'],
    ['the one that was asked for, before that of the job', 'printer: plotter', TWO, 'office', 'office'],
    ['none, where the job says so', 'printer: none', SHOP, undefined, undefined],
    ['none, where it was asked for', 'printer: office', SHOP, 'none', undefined],
    ['the one that was asked for, before none in the job', 'printer: none', SHOP, 'office', 'office'],
  ] as const)('%s', (_, print, shop, options, id) => {
    expect(printer(print, shop, options)).toBe(id);
  });

  it('is said in words', () => {
    const stamp = (print: string, shop: string) => settled(print, shop).stamp;
    expect(stamp('', SHOP)).toBe('corrected for printer office: it prints 0.99 in x, 1.002 in y');
    expect(stamp('', TWO)).toBe('not corrected: no printer is named');
    expect(stamp('printer: none', SHOP)).toBe('not corrected for any printer');
    expect(stamp('printer: plotter', TWO)).toBe('not corrected: printer plotter prints true');
    expect(stamp('', 'printers: {office: {margin: 1/4}}')).toBe('not corrected: printer office is not yet calibrated');
  });

  it('that nobody knows is a problem, but where it is about to be measured', () => {
    expect(refused('', SHOP, { options: { printer: 'offce' } })).toEqual(['printer-unknown']);
    expect(settled('', SHOP, { options: { printer: 'new' }, newPrinter: true }).printer).toMatchObject({
      id: 'new',
      x: 1,
    });
  });

  it('may not be called none', () => {
    const read = readShop({ text: 'printers: {none: {x: 1}}', file: 'shop.yaml' });
    expect(read.ok ? [] : read.problems.map(({ code, line }) => [code, line])).toEqual([['printer-name', 1]]);
  });
});

describe('margins', () => {
  it('are the wider of the wished and the printer’s own on each side, the sheet’s without its scale', () => {
    const { sheet, margin } = settled('paper: a4, margin: {top: 10, sides: 6, bottom: 10}', SHOP);
    expect(margin).toEqual({ top: 10, right: 6, bottom: 10, left: 6 });
    expect(sheet.margin).toEqual({ top: 10, right: 6, bottom: 15, left: 7 });
    expect(sheet.area).toEqual({ x: 7, y: 10, width: 197, height: 272 });
    expect(sheet.onItsSide).toMatchObject({
      width: 297,
      height: 210,
      margin: { top: 10, right: 15, bottom: 10, left: 15 },
    });
    expect(right(sheet.onItsSide.area)).toBe(282);
  });

  it('of no printer are those that are wished', () => {
    expect(settled('margin: 20, printer: none', SHOP).sheet.margin).toEqual({
      top: 20,
      right: 20,
      bottom: 20,
      left: 20,
    });
  });

  it('that leave too little of a sheet are a problem where something goes on single sheets', () => {
    expect(refused('margin: 40', SHOP, { uses: ['readings'] })).toEqual(['margins-too-wide']);
    expect(refused('margin: 90', SHOP, { uses: ['sheet'] })).toEqual(['margins-too-wide']);
    expect(settled('margin: 40', SHOP, { uses: ['sheet'] }).sheet.area.width).toBe(130);
  });
});

describe('the paper', () => {
  it('is the one that was asked for, the job’s, or the usual one', () => {
    expect(settled('paper: a3', SHOP, { options: { paper: 'letter' } }).paper).toMatchObject({ id: 'letter' });
    expect(settled('paper: a3', SHOP)).toMatchObject({ paper: { id: 'a3' }, sheet: { id: 'a3' }, units: 'mm' });
    expect(settled(undefined, SHOP)).toMatchObject({ paper: { id: 'a4' }, units: 'mm' });
    expect(settled(undefined, SHOP, { options: { units: 'in' } })).toMatchObject({
      paper: { id: 'letter' },
      units: 'in',
    });
  });

  it('that is a roll or one page leaves the usual one for what goes on single sheets', () => {
    for (const paper of ['roll:24in', 'fit']) {
      const { paper: full, sheet } = settled(`paper: "${paper}"`, SHOP);
      expect([full.kind === 'sheet', sheet.id]).toEqual([false, 'a4']);
      expect(settled('', SHOP, { options: { paper }, uses: ['readings', 'full scale'] }).sheet.id).toBe('a4');
      expect(settled('', SHOP, { options: { paper }, uses: [] }).sheet.id).toBe('a4');
      expect(refused('', SHOP, { options: { paper }, uses: ['sheet'] })).toEqual(['sheet-paper']);
      expect(refused('', SHOP, { options: { paper }, uses: ['readings'] })).toEqual(['sheet-paper']);
    }
  });

  it('is large enough where readings stand on it', () => {
    expect(refused('paper: a5', SHOP, { uses: ['readings'] })).toEqual(['sheet-paper']);
    expect(settled('paper: a5', SHOP, { uses: ['sheet', 'full scale'] }).sheet.id).toBe('a5');
  });

  it('and the printer are both told where both are wrong', () => {
    expect(refused('', SHOP, { options: { paper: 'lettr', printer: 'offce' } })).toEqual([
      'paper-unknown',
      'printer-unknown',
    ]);
  });
});

it('date and number are passed on, and nothing else is settled by them', () => {
  const options = { date: '12 March 2031', number: '41' };
  expect(settled('', SHOP, { options })).toEqual({ ...settled('', SHOP), ...options });
});

describe('words that were asked for', () => {
  it.each([
    ['date', '', 'text-missing', 'the date that was asked for: the text is empty'],
    ['date', '12 March\n2031', 'text-line', 'a line break or an invisible character'],
    ['date', 'x'.repeat(61), 'text-line-long', 'the text has 61 characters'],
    ['number', ' ', 'text-missing', 'the number that was asked for: the text is empty'],
    ['number', '41\u001b[31m', 'text-line', 'a line break or an invisible character'],
    ['number', '9'.repeat(25), 'text-line-long', 'the text has 25 characters'],
  ])('a %s of %j is refused as it is in a job', (name, text, code, words) => {
    const made = question('', SHOP, { options: { [name]: text } });
    expect(made.ok ? [] : made.problems).toEqual([
      expect.objectContaining({ code, path: [name], message: expect.stringContaining(words) }),
    ]);
    expect(made.ok || made.problems[0]!.hint).not.toContain('key');
  });

  it('may be as long as they are allowed to be', () => {
    const options = { date: 'x'.repeat(60), number: '9'.repeat(24) };
    expect(settled('', SHOP, { options })).toMatchObject(options);
  });
});
