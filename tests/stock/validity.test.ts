import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CODES } from '../../src/stock/codes.ts';
import type { StockInput } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { faults } from './check-plan.ts';
import { planned, QUICK } from './planned.ts';

const INCH = 25.4;

/** Lengths as a shop has them: sixteenths of an inch, tenths of a millimetre, or anything. */
const length = (least: number, most: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc
      .integer({ min: Math.ceil((least * 16) / INCH), max: Math.floor((most * 16) / INCH) })
      .map((n) => (n * INCH) / 16),
    fc.integer({ min: 10 * least, max: 10 * most }).map((n) => n / 10),
    fc.double({ min: least, max: most, noNaN: true }),
  );

const sheet = fc.record(
  {
    width: length(400, 900),
    height: length(400, 1200),
    count: fc.integer({ min: 1, max: 6 }),
    offcut: fc.boolean(),
    trim: fc.oneof(fc.constant(0), length(1, 12), fc.record({ left: length(1, 9), top: length(1, 9) })),
  },
  { requiredKeys: ['width', 'height'] },
);

const piece = fc
  .record({
    width: length(40, 500),
    height: length(40, 500),
    count: fc.integer({ min: 1, max: 4 }),
    turn: fc.boolean(),
    factoryEdge: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
    opening: fc.double({ min: 0.4, max: 0.9, noNaN: true }),
  })
  .map(({ opening, ...rest }) => ({
    ...rest,
    fallouts: [
      { width: rest.width * opening, height: (rest.height * opening) / 2 },
      { width: (rest.width * opening) / 2, height: (rest.height * opening) / 3 },
    ],
  }));

const options = fc.record(
  {
    kerf: fc.oneof(fc.constant(0), length(1, 5)),
    trim: fc.oneof(fc.constant(0), length(1, 12), fc.record({ right: length(1, 9), bottom: length(1, 9) })),
    longestCut: length(600, 1200),
    leastOffcut: length(1, 200),
    fallouts: fc.boolean(),
    seed: fc.integer({ min: 0, max: 1000 }),
  },
  { requiredKeys: [] },
);

const inputs: fc.Arbitrary<StockInput> = fc.record({
  sheets: fc
    .array(sheet, { minLength: 1, maxLength: 3 })
    .map((sheets) => sheets.map((each, i) => ({ id: `s${i}`, cost: i + 1, ...each }))),
  pieces: fc
    .array(piece, { minLength: 1, maxLength: 12 })
    .map((pieces) => pieces.map((each, i) => ({ id: `p${i}`, ...each }))),
  options: options.map((each) => ({ effort: QUICK, ...each })),
});

describe('plans of all sorts', () => {
  it('are valid, or say what is wrong', () => {
    let plans = 0;
    fc.assert(
      fc.property(inputs, (input) => {
        const made = planStock(input);
        if (made.ok) {
          plans++;
          expect(faults(input, made.value)).toEqual([]);
        } else {
          for (const { code, message, hint } of made.problems) {
            expect(Object.keys(CODES)).toContain(code);
            expect(message).not.toMatch(/NaN|undefined|Infinity/);
            expect(hint).not.toBe('');
          }
        }
      }),
      { numRuns: 100, seed: 4 },
    );
    expect(plans).toBeGreaterThan(40);
  });

  it('serve many equal blanks and many sheets', () => {
    const plan = planned({
      sheets: [{ id: 'board', width: 812.8, height: 1016 }],
      pieces: [
        { id: 'a', width: 16 * INCH, height: 20 * INCH, count: 81 },
        { id: 'b', width: 11 * INCH, height: 14 * INCH, count: 60 },
      ],
      options: { effort: QUICK },
    });
    expect(plan.sheets.length).toBe(plan.count);
  });

  it('leave the input as it was, and are plain data', () => {
    const input: StockInput = {
      sheets: [{ id: 's', width: 100, height: 100 }],
      pieces: [{ id: 'p', width: 30, height: 60, count: 7 }],
      options: { effort: QUICK },
    };
    const before = JSON.stringify(input);
    const plan = planned(input);
    expect(JSON.stringify(input)).toBe(before);
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });
});

describe('the checker of plans', () => {
  const input: StockInput = {
    sheets: [{ id: 's', width: 100, height: 100, count: 3 }],
    pieces: [
      { id: 'a', width: 30, height: 60, count: 3 },
      { id: 'b', width: 50, height: 20, turn: false },
    ],
    options: { kerf: 2, effort: QUICK, longestCut: 100 },
  };
  const plan = planned(input);
  const moved = (change: (text: string) => string): string[] => faults(input, JSON.parse(change(JSON.stringify(plan))));

  it('sees what is wrong', () => {
    expect(faults({ ...input, pieces: [...input.pieces, { id: 'c', width: 1, height: 1 }] }, plan).join()).toContain(
      '4 of 5',
    );
    expect(faults({ ...input, options: { ...input.options, kerf: 60 } }, plan).join()).toContain('too close');
    expect(faults({ ...input, options: { ...input.options, trim: 3 } }, plan).join()).toContain('in its trim');
    expect(faults({ ...input, options: { ...input.options, longestCut: 20 } }, plan).join()).toContain('long');
    expect(faults({ ...input, sheets: [{ ...input.sheets[0]!, width: 90 }] }, plan).join()).toContain('another size');
    const edge = input.pieces.map((each) => ({ ...each, factoryEdge: true }));
    const trimmed = { ...input, pieces: edge, options: { ...input.options, trim: 0.1 } };
    expect(faults(trimmed, plan).join()).toContain('no factory edge');
    expect(moved((text) => text.replaceAll('"turned":false', '"turned":true')).join()).toContain('turned');
    expect(moved((text) => text.replaceAll('"copy":1', '"copy":2')).join()).toContain('twice');
    expect(moved((text) => text.replace('"copy":1', '"copy":2')).join()).toContain('differ');
    expect(moved((text) => text.replace('"status":"optimal"', '"status":"open"')).join()).toContain('contradicts');
  });
});
