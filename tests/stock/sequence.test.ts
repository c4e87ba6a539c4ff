import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewerSettings } from '../../src/stock/planner/fewer-settings.ts';
import { largest } from '../../src/stock/planner/kept.ts';
import { layOutSheet, sheetToLay } from '../../src/stock/planner/layout.ts';
import type { CutNode, UsedSheet } from '../../src/stock/planner/model.ts';
import { Search } from '../../src/stock/planner/search/search.ts';
import { type CutSequence, cutSequence, type Part } from '../../src/stock/planner/sequence.ts';
import { type Task, taskOf } from '../../src/stock/planner/task.ts';
import { flatLayout, typesOf } from '../../src/stock/planner/trees/flat.ts';
import type { Forest } from '../../src/stock/planner/trees/forest.ts';
import { planned, QUICK } from './planned.ts';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const NOISE = 1e-3;
const key = ({ x, y, width, height }: Rect): string => [x, y, width, height].map((n) => n.toFixed(2)).join(' ');

/** Does what the instructions say, board by board, and returns what comes off; throws where that is not possible. */
function replay(sheet: UsedSheet, { instructions }: CutSequence, kerf: number): readonly string[] {
  const boards = new Map<string, Rect>([['A', { x: 0, y: 0, width: sheet.width, height: sheet.height }]]);
  const off: string[] = [];
  let [stop, held, edge] = [-1, '', ''];
  const free = (part: Part | undefined): void => {
    if (part === undefined) return;
    if (part.kind === 'board') boards.set(part.board, part);
    else off.push(`${part.kind === 'piece' ? `${part.piece} #${part.copy}` : part.kind} ${key(part)}`);
  };
  instructions.forEach((step, i) => {
    if (step.number !== i + 1) throw new Error('numbers are missing');
    if (step.kind === 'set') {
      stop = step.stop;
    } else if (step.kind === 'take') {
      [held, edge] = [step.board, step.edge];
      const board = boards.get(held);
      if (board === undefined) throw new Error(`there is no board ${held}`);
      if (Math.abs(board.width - step.width) + Math.abs(board.height - step.height) > NOISE) {
        throw new Error(`board ${held} has another size`);
      }
    } else {
      const board = boards.get(step.board)!;
      if (step.board !== held || step.stop !== stop) throw new Error('another board, or another stop');
      const upright = edge === 'left' || edge === 'right';
      const far = edge === 'right' || edge === 'bottom';
      const size = upright ? board.width : board.height;
      if (stop <= 0 || stop >= size) throw new Error('the blade runs beside the board');
      if (Math.abs(step.length - (upright ? board.height : board.width)) > NOISE)
        throw new Error('the cut is not across');
      // What lies between stop and blade keeps its size; the kerf is beyond.
      const start = upright ? board.x : board.y;
      const [from, to] = far ? [size - stop - kerf, size - stop] : [stop, stop + kerf];
      const side = (at: number, length: number): Rect =>
        upright ? { ...board, x: start + at, width: length } : { ...board, y: start + at, height: length };
      const first = side(0, Math.max(0, from));
      const second = side(to, Math.max(0, size - to));
      for (const [want, is] of [
        [first, step.first],
        [second, step.second],
      ] as const) {
        if (is === undefined) {
          if (Math.min(want.width, want.height) > NOISE) throw new Error('something is not told of');
        } else if (
          Math.max(Math.abs(want.x - is.x), Math.abs(want.y - is.y)) > NOISE ||
          Math.max(Math.abs(want.width - is.width), Math.abs(want.height - is.height)) > NOISE
        ) {
          throw new Error(`cut ${step.cut} frees ${key(want)} and not ${key(is)}`);
        }
      }
      boards.delete(step.board);
      free(step.first);
      free(step.second);
    }
  });
  if ([...boards.keys()].length > 0 && instructions.length > 0) throw new Error('a board is left');
  return off.sort();
}

function leaves(node: CutNode): string[] {
  if (node.kind === 'cuts') return node.parts.flatMap(leaves);
  if (node.width <= 0 || node.height <= 0) return [];
  return [`${node.kind === 'piece' ? `${node.piece} #${node.copy}` : node.kind} ${key(node)}`];
}

describe('the order of the cuts', () => {
  it('frees exactly what the tree says, whatever the plan', () => {
    const side = fc.integer({ min: 8, max: 70 });
    fc.assert(
      fc.property(
        fc.array(fc.record({ width: side, height: side }), { minLength: 1, maxLength: 14 }),
        fc.constantFrom(0, 2),
        fc.constantFrom(0, 5),
        (list, kerf, trim) => {
          const pieces = list.map((each, i) => ({ id: `p${i}`, ...each }));
          const options = { kerf, trim, effort: QUICK };
          for (const sheet of planned({ sheets: [{ id: 's', width: 110, height: 90 }], pieces, options }).sheets) {
            const sequence = cutSequence(sheet.tree);
            expect(replay(sheet, sequence, kerf)).toEqual(leaves(sheet.tree).sort());
            const cuts = sequence.instructions.filter(({ kind }) => kind === 'cut').length;
            expect(cuts).toBe(sequence.cuts);
            expect(sequence.settings).toBe(sequence.instructions.filter(({ kind }) => kind === 'set').length);
            expect(sequence.settings).toBeLessThanOrEqual(cuts);
          }
        },
      ),
      { numRuns: 40, seed: 14 },
    );
  });

  it('sets the stop twice for four equal blanks, and turns the board', () => {
    const plan = planned({
      sheets: [{ id: 's', width: 812.8, height: 1016 }],
      pieces: [{ id: 'p', width: 400, height: 500, count: 4, turn: false }],
      options: { effort: QUICK, kerf: 3, leastOffcut: 50 },
    });
    const sequence = cutSequence(plan.sheets[0]!.tree);
    const stops = sequence.instructions.flatMap((step) => (step.kind === 'set' ? [step.stop] : []));
    expect([...stops].sort()).toEqual([400, 500]);
    // Two strips, each with two blanks: 2 + 2 × 2 cuts, the last of each row frees it from what is left.
    expect(sequence.cuts).toBe(6);
  });

  it('cuts all boards in hand before the stop is changed', () => {
    const plan = planned({
      sheets: [{ id: 's', width: 100, height: 100 }],
      pieces: [{ id: 'p', width: 20, height: 25, count: 20, turn: false }],
      options: { effort: QUICK },
    });
    const sequence = cutSequence(plan.sheets[0]!.tree);
    expect([sequence.settings, sequence.cuts]).toEqual([2, 19]);
  });

  it('has nothing to say of a sheet that is a blank', () => {
    const plan = planned({
      sheets: [{ id: 's', width: 10, height: 10 }],
      pieces: [{ id: 'p', width: 10, height: 10 }],
    });
    expect(cutSequence(plan.sheets[0]!.tree)).toEqual({ instructions: [], cuts: 0, settings: 0, turns: 0 });
  });
});

describe('laying sheets anew for fewer settings', () => {
  it('keeps every piece on its sheet and the largest offcut, and takes fewer settings in all', () => {
    const [before, after] = [{ settings: 0 }, { settings: 0 }];
    const settings = (task: Task, forest: Forest): number => {
      const sheets = Array.from({ length: forest.sheets }, (_, sheet) => sheet);
      const piece = (type: number) => ({ piece: task.members[type]![0]!, copy: 1 });
      return sheets.reduce((sum, sheet) => {
        const laid = sheetToLay(task.supplies[forest.stock[sheet]!]!, sheet);
        return sum + cutSequence(layOutSheet(task, forest, laid, Infinity, piece)).settings;
      }, 0);
    };
    const pieces = (forest: Forest): string[] =>
      Array.from({ length: forest.sheets }, (_, sheet) =>
        typesOf(flatLayout(forest, forest.root[sheet]!)).sort().join(),
      );
    for (let day = 0; day < 12; day++) {
      const blanks = Array.from({ length: 4 + day }, (_, i) => ({
        id: `p${i}`,
        width: 10 + 5 * ((i * 7 + day) % 6),
        height: 15 + 5 * ((i * 5 + 3 * day) % 8),
      }));
      const task = taskOf({ sheets: [{ id: 's', width: 110, height: 90 }], pieces: blanks });
      if (!task.ok) throw new Error('not task');
      const { best } = new Search(task.value.instance, 1);
      const tidied = fewerSettings(task.value, best, Infinity, 400_000);
      expect(pieces(tidied)).toEqual(pieces(best));
      expect(largest(tidied, task.value)).toBeGreaterThanOrEqual(largest(best, task.value));
      before.settings += settings(task.value, best);
      after.settings += settings(task.value, tidied);
    }
    expect(after.settings).toBeLessThan(before.settings);
  });
});
