import { PassThrough } from 'node:stream';
import { describe, expect, it, vi } from 'vitest';
import { calibrate } from '../../src/calibrate/calibrate.ts';
import { readReadings } from '../../src/calibrate/readings.ts';
import { type Asker, askPapers, askReadings } from '../../src/cli/asking/readings.ts';
import type { Calibrated } from '../../src/shop/readings/readings.ts';

/** Gives the answers in their order; a wrong one is asked again, as at a terminal. */
function scripted(
  answers: readonly (string | boolean)[],
): Asker & { readonly left: () => number; readonly refused: string[] } {
  const queue = [...answers];
  const refused: string[] = [];
  const next = () => {
    if (queue.length === 0) throw new Error('asked more than there are answers');
    return queue.shift()!;
  };
  return {
    left: () => queue.length,
    refused,
    async text(_, { optional = false, wrong }) {
      for (;;) {
        const answer = String(next());
        const said = answer === '' ? (optional ? undefined : 'needed') : wrong?.(answer);
        if (said === undefined) return answer === '' ? undefined : answer;
        refused.push(said);
      }
    },
    async confirm() {
      return next() as boolean;
    },
  };
}

const OFFERED = { printers: ['office'], heads: ['pull-45'], machines: [{ id: 'big-laser', kind: 'laser' as const }] };

async function readings<K extends Calibrated>(kind: K, answers: readonly (string | boolean)[]) {
  const ask = scripted(answers);
  const text = await askReadings(kind, ask, OFFERED);
  expect(ask.left()).toBe(0);
  const read = readReadings(kind, { text, file: 'answers' });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { ...read.value.readings, text, refused: ask.refused };
}

describe('readings by question and answer', () => {
  it('a printer, two sheets, a slip of the pen asked again', async () => {
    const found = await readings('printer', [
      'office',
      '',
      '199,3',
      '199.3',
      '7 7/8 in',
      '282.3',
      '282.4',
      true,
      '199.2',
      '199.6',
      '',
      false,
    ]);
    expect(found.refused[0]).toContain('decimal comma');
    expect(found.line).toBeUndefined();
    expect(found.sheets).toEqual([
      { across: 199.3, down: expect.closeTo(200.025, 9), falling: 282.3, rising: 282.4 },
      { across: 199.2, down: 199.6 },
    ]);
  });

  it('a guide', async () => {
    const found = await readings('guide', ['1.4', '2 in', '50.9', true, '4 in', '101.7', false]);
    expect(found.strips[1]).toEqual({ setting: expect.closeTo(101.6, 9), width: 101.7 });
    expect(found.thickness).toBe(1.4);
  });

  it('a head: sides in the order of the face, what is not kept left out', async () => {
    const numbers = ['4.1', '2.6', '4.2', '2.5', '4.3', '2.6', '4.2', '-1'];
    const found = await readings('head', ['pull-45', false, 'fresh, "no 3"', '', '1.4', ...numbers, false]);
    expect(found).toMatchObject({ head: 'pull-45', blade: 'fresh, "no 3"' });
    expect(found.depth).toBeUndefined();
    expect(found.pieces[0]!.left).toEqual({ start: 4.2, stop: -1 });
  });

  it('a bevel', async () => {
    expect((await readings('bevel', ['pull-45', '3.2', '3.1', false])).strips).toEqual([
      { thickness: 3.2, setback: 3.1 },
    ]);
  });

  it('the coupon of a laser, a drag knife, a bevel head', async () => {
    const square = ['29.8', '', '30.2', '', '29.8', '', '30.2', ''];
    const laser = await readings('laser', ['big-laser', '98', '98.02', '', '97.9', '', true, ...square]);
    expect(laser.stripsX).toEqual([98, 98.02]);
    expect(laser.square).toEqual({ pieceX: [29.8], holeX: [30.2], pieceY: [29.8], holeY: [30.2] });
    expect((await readings('laser', ['l', '98', '', '97.9', '', false])).square).toBeUndefined();
    const knife = await readings('knife', ['knife', '40', '', '56.2', '56.3', '']);
    expect([knife.sides, knife.diagonals]).toEqual([[40], [56.2, 56.3]]);
    const bevel = await readings('bevel-coupon', [
      'bevel',
      '1.4',
      '4.2',
      '',
      '2.6',
      '-1',
      '',
      true,
      '80',
      '',
      '77.2',
      '',
    ]);
    expect(bevel).toMatchObject({ thickness: 1.4, starts: [4.2], stops: [2.6, -1], face: [80], back: [77.2] });
    expect((await readings('bevel-coupon', ['b', '1.4', '4', '', '2', '', false])).face).toBeUndefined();
  });

  it('which paper is set, before a length near 94 or 97 % is believed', async () => {
    const lines = 'printer: office\nsheets: [{across: 188.1, down: 188.2}]\n';
    const text = `${lines}${await askPapers(scripted(['letter', 'letter']))}`;
    expect(calibrate({ kind: 'printer', text, file: 'answers', date: '2026-03-01' }).ok).toBe(true);
    const other = `${lines}${await askPapers(scripted(['letter', 'a4']))}`;
    const result = calibrate({ kind: 'printer', text: other, file: 'answers', date: '2026-03-01' });
    expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual(['calibrate-wrong-paper']);
  });
});

describe('at a terminal', () => {
  it('what is typed comes back, and a wrong answer is asked again', async () => {
    const input = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => {} });
    const output = Object.assign(new PassThrough(), { columns: 80, rows: 24, isTTY: true });
    output.resume();
    vi.doMock('@clack/prompts', async (original) => {
      const real = await original<typeof import('@clack/prompts')>();
      return { ...real, text: (given: object) => real.text({ ...given, input, output } as never) };
    });
    const { TERMINAL } = await import('../../src/cli/asking/prompts.ts');
    const answer = TERMINAL.text('How wide?', { wrong: (given) => (given === 'x1' ? 'no length' : undefined) });
    const wait = () => new Promise((resolve) => setImmediate(resolve));
    await wait();
    for (const key of 'x1') input.write(key);
    await wait();
    input.write('\r');
    await wait();
    input.write('\x7f');
    input.write('2');
    await wait();
    input.write('\r');
    expect(await answer).toBe('x2');
    const stopped = TERMINAL.text('How wide?', {});
    await wait();
    input.write('\x03');
    await expect(stopped).rejects.toThrow(/nothing was changed/);
    vi.doUnmock('@clack/prompts');
  });
});
