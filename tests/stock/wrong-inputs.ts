/** Inputs that the planner refuses, with what it must say of each. */
import { QUICK } from './planned.ts';

export const sheet = { id: 'bone-4', width: 812.8, height: 1016 };
export const piece = { id: 'heron', width: 406.4, height: 508 };

/** What may be anything at all, as it comes from JSON. */
export const given = (sheets: unknown, pieces: unknown, options: object = {}): string =>
  JSON.stringify({ sheets, pieces, options: { effort: QUICK, ...options } });

interface Row {
  readonly what: string;
  readonly input: string;
  readonly code: string;
  readonly path: string;
  /** Words of the message and the hint. */
  readonly says: readonly string[];
}

export const ROWS: readonly Row[] = [
  { what: 'no object', input: '[]', code: 'stock-shape', path: '', says: ['object'] },
  { what: 'no sheets', input: given([], [piece]), code: 'stock-sheets-missing', path: 'sheets', says: ['no sheets'] },
  {
    what: 'sheets all used up',
    input: given([{ ...sheet, count: 0 }], [piece]),
    code: 'stock-sheets-missing',
    path: 'sheets',
    says: ['count of 0'],
  },
  { what: 'no pieces', input: given([sheet], []), code: 'stock-pieces-missing', path: 'pieces', says: ['no pieces'] },
  {
    what: 'pieces that are no list',
    input: given([sheet], 'heron'),
    code: 'stock-pieces-missing',
    path: 'pieces',
    says: ['list'],
  },
  {
    what: 'a piece that is no object',
    input: given([sheet], [null]),
    code: 'stock-shape',
    path: 'pieces[0]',
    says: ['null'],
  },
  {
    what: 'a misspelt key',
    input: given([sheet], [{ ...piece, quantitiy: 2 }]),
    code: 'stock-key-unknown',
    path: 'pieces[0].quantitiy',
    says: ['count'],
  },
  {
    what: 'an unknown option',
    input: given([sheet], [piece], { saw: 3 }),
    code: 'stock-key-unknown',
    path: 'options.saw',
    says: ['kerf'],
  },
  {
    what: 'no id',
    input: given([{ width: 10, height: 10 }], [{ id: 'p', width: 1, height: 1 }]),
    code: 'stock-id',
    path: 'sheets[0].id',
    says: ['undefined', 'name it'],
  },
  {
    what: 'two sheets of one id',
    input: given([sheet, sheet], [piece]),
    code: 'stock-id-twice',
    path: 'sheets[1].id',
    says: ['bone-4'],
  },
  {
    what: 'two pieces of one id',
    input: given([sheet], [piece, piece]),
    code: 'stock-id-twice',
    path: 'pieces[1].id',
    says: ['heron'],
  },
  {
    what: 'a width of nothing',
    input: given([{ ...sheet, width: 0 }], [piece]),
    code: 'stock-number',
    path: 'sheets[0].width',
    says: ['above 0'],
  },
  {
    what: 'a width in words',
    input: given([sheet], [{ ...piece, width: '16 in' }]),
    code: 'stock-number',
    path: 'pieces[0].width',
    says: ['16 in', 'a number'],
  },
  {
    what: 'half a piece',
    input: given([sheet], [{ ...piece, count: 1.5 }]),
    code: 'stock-number',
    path: 'pieces[0].count',
    says: ['whole number'],
  },
  {
    what: 'a negative count',
    input: given([{ ...sheet, count: -1 }], [piece]),
    code: 'stock-number',
    path: 'sheets[0].count',
    says: ['from 0'],
  },
  {
    what: 'a negative price',
    input: given([{ ...sheet, cost: -3 }], [piece]),
    code: 'stock-number',
    path: 'sheets[0].cost',
    says: ['-3'],
  },
  {
    what: 'one sheet without a price',
    input: given(
      [
        { ...sheet, cost: 9.5 },
        { ...sheet, id: 'large', width: 1016 },
      ],
      [piece],
    ),
    code: 'stock-cost-missing',
    path: 'sheets[1].cost',
    says: ['price'],
  },
  {
    what: 'a negative kerf',
    input: given([sheet], [piece], { kerf: -1 }),
    code: 'stock-number',
    path: 'options.kerf',
    says: ['-1', 'from 0'],
  },
  {
    what: 'a negative trim',
    input: given([sheet], [piece], { trim: { left: -2 } }),
    code: 'stock-number',
    path: 'options.trim.left',
    says: ['-2'],
  },
  {
    what: 'a trim of an unknown side',
    input: given([sheet], [piece], { trim: { botom: 2 } }),
    code: 'stock-key-unknown',
    path: 'options.trim.botom',
    says: ['bottom'],
  },
  {
    what: 'a trim wider than the sheet',
    input: given([sheet], [piece], { trim: 500 }),
    code: 'stock-trim-too-wide',
    path: 'sheets[0]',
    says: ['bone-4'],
  },
  {
    what: 'no effort',
    input: given([sheet], [piece], { effort: -1 }),
    code: 'stock-number',
    path: 'options.effort',
    says: ['effort'],
  },
  {
    what: 'a seed that is not whole',
    input: given([sheet], [piece], { seed: 0.5 }),
    code: 'stock-number',
    path: 'options.seed',
    says: ['whole'],
  },
  {
    what: 'a longest cut of 0',
    input: given([sheet], [piece], { longestCut: 0 }),
    code: 'stock-number',
    path: 'options.longestCut',
    says: ['above 0'],
  },
  {
    what: 'a switch in words',
    input: given([sheet], [piece], { fallouts: 'yes' }),
    code: 'stock-flag',
    path: 'options.fallouts',
    says: ['true or false'],
  },
  {
    what: 'a rule that nobody knows',
    input: given([sheet], [piece], { first: 'price' }),
    code: 'stock-choice',
    path: 'options.first',
    says: ['"price"', 'sheets or cost'],
  },
  {
    what: 'a label that is a number',
    input: given([sheet], [{ ...piece, label: 7 }]),
    code: 'stock-label',
    path: 'pieces[0].label',
    says: ['text'],
  },
  {
    what: 'a fallout larger than its piece',
    input: given([sheet], [{ ...piece, fallouts: [{ width: 500, height: 300 }] }]),
    code: 'stock-fallout-too-large',
    path: 'pieces[0].fallouts[0]',
    says: ['500 × 300', '406.4 × 508'],
  },
  {
    what: 'far too many pieces',
    input: given(
      [sheet],
      [
        { ...piece, count: 19_000 },
        { ...piece, id: 'tern', count: 19_000 },
      ],
    ),
    code: 'stock-pieces-too-many',
    path: 'pieces',
    says: ['38000', '20000'],
  },
  {
    what: 'a blank larger than every sheet',
    input: given(
      [sheet, { id: 'small', width: 400, height: 500 }],
      [{ ...piece, width: 900, height: 1100, label: 'Heron, under mat 1' }],
      { trim: 10 },
    ),
    code: 'stock-piece-too-large',
    path: 'pieces[0]',
    says: ['Heron, under mat 1', '900 × 1100', '792.8 × 996'],
  },
  {
    what: 'a blank that would have to turn',
    input: given([sheet], [{ ...piece, width: 1000, height: 800, turn: false }]),
    code: 'stock-piece-turned',
    path: 'pieces[0]',
    says: ['turn'],
  },
  {
    what: 'a blank that takes too long a cut',
    input: given([sheet], [{ ...piece, width: 700, height: 900 }], { longestCut: 850 }),
    code: 'stock-cut-too-long',
    path: 'pieces[0]',
    says: ['longer than 850'],
  },
  {
    what: 'a factory edge where all are trimmed',
    input: given([sheet], [{ ...piece, factoryEdge: true }], { trim: 3 }),
    code: 'stock-edges-trimmed',
    path: 'pieces[0]',
    says: ['factory edge'],
  },
  {
    what: 'too little stock, by area',
    input: given([{ ...sheet, count: 1 }], [{ ...piece, count: 9 }]),
    code: 'stock-too-small',
    path: 'sheets',
    says: ['5 × "heron"', '2 more of "bone-4" would do'],
  },
  {
    what: 'too little stock, though the area would do',
    input: given([{ ...sheet, count: 1 }], [{ ...piece, width: 420, height: 850, count: 2 }]),
    code: 'stock-too-small',
    path: 'sheets',
    says: ['1 × "heron"', '1 more of "bone-4" would do'],
  },
  {
    what: 'offcuts alone that do not do',
    input: given([{ ...sheet, count: 1, offcut: true }], [{ ...piece, count: 5 }]),
    code: 'stock-too-small',
    path: 'sheets',
    says: ['1 × "heron"', 'add sheets'],
  },
];
