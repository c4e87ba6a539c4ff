import { hingeSide } from '../../bench/hinges.ts';
import type { Stroke } from '../../bench/model.ts';
import type { Fact } from '../../drawing/full-scale.ts';
import type { Item } from '../../drawing/model.ts';
import { type Box, box, grown, right, union } from '../../geometry/box.ts';
import { between, minus, plus, times, unit } from '../../geometry/point.ts';
import { mirroredSide, SIDES } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { diagonals } from '../full-scale/tape-checks.ts';
import { edges, line, lineBox, tabbedTrim } from './lines.ts';

export function drawBoard(
  mat: Mat,
  layer: number,
  board: Box,
  inset: number,
  add: (group: string, ...items: Item[]) => void,
): void {
  for (const edge of edges(board)) {
    add('board', line('board', edge.from, edge.to, `board-${edge.name}`));
    const middle = between(edge.from, edge.to, 0.5);
    const along = unit(minus(edge.to, edge.from));
    add(
      'centre',
      line('centre', middle, plus(middle, times({ x: -along.y, y: along.x }, inset + 10)), `centre-${edge.name}`),
    );
  }
  const { trim, pointers } = tabbedTrim(board, inset);
  add('board', ...trim, ...pointers);
  const { blankBox } = mat.layers[layer]!;
  if (blankBox.width < mat.outer.width || blankBox.height < mat.outer.height) {
    const mirrored = box(
      board.x + mat.outer.width - right(blankBox),
      board.y + blankBox.y,
      blankBox.width,
      blankBox.height,
    );
    for (const edge of edges(mirrored)) add('board', line('blank', edge.from, edge.to, `blank-${edge.name}`));
  }
}

export function drawHinge(
  job: Job,
  mat: Mat,
  board: Box,
  inset: number,
  add: (group: string, ...items: Item[]) => void,
): void {
  const side = hingeSide(job, mat);
  const edge = edges(grown(board, -inset - 2.5))[SIDES.indexOf(mirroredSide(side))]!;
  for (const [from, to] of [
    [0.2, 0.44],
    [0.56, 0.8],
  ] as const) {
    add(
      'hinge',
      line(
        'hinge',
        between(edge.from, edge.to, from),
        between(edge.from, edge.to, to),
        `hinge-${side}-${from < 0.5 ? 1 : 2}`,
      ),
    );
  }
}

/** The diagonals of what is cut show whether the sheets were joined square. */
export function cutDiagonals(own: readonly Stroke[], job: Job): readonly Fact[] {
  const cuts = new Map<number, Box>();
  for (const { opening, line: cut } of own) {
    const known = cuts.get(opening);
    cuts.set(opening, known === undefined ? lineBox(cut) : union([known, lineBox(cut)]));
  }
  // Of many openings the group's own diagonals show as much.
  const boxes = cuts.size === 0 ? [] : cuts.size > 4 ? [union([...cuts.values()])] : [...cuts.values()];
  return boxes.map((each) => diagonals('diagonals of the lines to cut', each, job.units, 'cut'));
}
