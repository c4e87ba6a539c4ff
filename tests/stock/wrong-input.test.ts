import { describe, expect, it } from 'vitest';
import { showPath } from '../../src/problems/show.ts';
import { CODES } from '../../src/stock/codes.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { given, piece, ROWS, sheet } from './wrong-inputs.ts';

describe('a wrong input', () => {
  it.each(ROWS)('$what: $code', ({ input, code, path, says }) => {
    const made = planStock(JSON.parse(input));
    if (made.ok) throw new Error('planned all the same');
    const problem = made.problems.find((each) => each.code === code && showPath(each.path) === path);
    expect(made.problems.map((each) => `${each.code} ${showPath(each.path)}`)).toContain(`${code} ${path}`);
    for (const words of says) expect(`${problem?.message}; ${problem?.hint}`).toContain(words);
    expect(made.problems.every((each) => each.hint !== '' && each.code in CODES)).toBe(true);
  });

  it('is told whole, not problem by problem', () => {
    const made = planStock(
      JSON.parse(given([{ ...sheet, width: -1 }], [{ ...piece, height: 0, turn: 1 }], { kerf: -1 })),
    );
    expect(made.ok ? [] : made.problems.map(({ path }) => showPath(path))).toEqual([
      'sheets[0].width',
      'pieces[0].height',
      'pieces[0].turn',
      'options.kerf',
    ]);
  });

  it('covers every code that the planner has', () => {
    // Those that are made of jobs are met with the command, what is stopped in pace.test.ts.
    const others = ['stock-nothing', 'stock-price-missing', 'stock-sheets-assumed', 'stock-stopped'];
    const met = ROWS.map(({ code }) => code);
    // Booking has tests of its own: booking.test.ts.
    const own = Object.keys(CODES).filter((code) => !/^(?:booking|plans?)-/.test(code));
    expect(own.filter((code) => !met.includes(code) && !others.includes(code))).toEqual([]);
  });
});
