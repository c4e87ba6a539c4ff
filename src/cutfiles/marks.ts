import { hingeSide } from '../bench/hinges.ts';
import { type Path, placedPath, polygon } from '../geometry/path.ts';
import { type Point, plus } from '../geometry/point.ts';
import type { Side } from '../geometry/sides.ts';
import type { Machine } from '../shop/machine.ts';
import { blankSize } from './boards.ts';
import { lettering } from './letters.ts';
import type { CutJob, LaidBoard, Toolpath } from './model.ts';

const TICK = 6;
/** Clear of whatever is cut. */
const CLEAR = 2;
const HINGE_INSET = 3;
const HINGE_LINE = 20;
const LARGEST_LETTERS = 5;
const SMALLEST_LETTERS = 2.5;

/** Left and right change places when the back is seen. */
const SEEN: Readonly<Record<Side, Side>> = { top: 'top', bottom: 'bottom', left: 'right', right: 'left' };

/**
 * Scored on the back of the board, and there only: ticks at the middle of every edge, two dashes along the edge where
 * window and backing hinge, and, for a tool that can write, which edge is the top and the title.
 */
export function boardMarks(
  board: LaidBoard,
  cut: CutJob,
  machine: Machine,
  write: 'letters' | 'ticks',
): readonly Toolpath[] {
  if (machine.up !== 'back') return [];
  const { width, height } = blankSize(cut.mat, board.layer);
  const border = borders(cut, board.layer);
  const middle = { x: width / 2, y: height / 2 };
  const edge: Readonly<Record<Side, { readonly at: Point; readonly inwards: Point }>> = {
    top: { at: { x: middle.x, y: 0 }, inwards: { x: 0, y: 1 } },
    right: { at: { x: width, y: middle.y }, inwards: { x: -1, y: 0 } },
    bottom: { at: { x: middle.x, y: height }, inwards: { x: 0, y: -1 } },
    left: { at: { x: 0, y: middle.y }, inwards: { x: 1, y: 0 } },
  };
  const found: Toolpath[] = [];
  const mark = (id: string, path: Path): void => {
    found.push({
      operation: 'mark',
      id: `${id}-${board.layer}`,
      reversible: true,
      path: placedPath(path, board.place),
    });
  };
  for (const side of ['top', 'right', 'bottom', 'left'] as const) {
    const { at, inwards } = edge[SEEN[side]];
    const long = Math.min(TICK, border[side] - CLEAR);
    if (long < 1) continue;
    mark(`centre-${side}`, polygon([at, { x: at.x + inwards.x * long, y: at.y + inwards.y * long }], false));
  }
  const hinge = hingeSide(cut.job, cut.mat);
  if (border[hinge] > HINGE_INSET + CLEAR) {
    const { at, inwards } = edge[SEEN[hinge]];
    const along = { x: Math.abs(inwards.y), y: Math.abs(inwards.x) };
    const reach = Math.min(0.4 * (inwards.x === 0 ? width : height), 4 * HINGE_LINE);
    for (const [i, sign] of [-1, 1].entries()) {
      const point = (u: number): Point => ({
        x: at.x + inwards.x * HINGE_INSET + along.x * sign * u,
        y: at.y + inwards.y * HINGE_INSET + along.y * sign * u,
      });
      mark(`hinge-${hinge}-${i + 1}`, polygon([point(reach - Math.min(HINGE_LINE, reach / 2)), point(reach)], false));
    }
  }
  if (write === 'letters')
    for (const [i, path] of letters(cut, width, border.top).entries()) mark(`letters-${i + 1}`, path);
  return found;
}

/** From each edge of the blank to the nearest opening, sides named as from the face. */
function borders({ mat }: CutJob, layer: number): Readonly<Record<Side, number>> {
  const { trimBack } = mat.layers[layer - 1]!;
  const least = (side: Side): number =>
    Math.min(...mat.openings.map((opening) => opening.layers[layer - 1]!.border[side])) - trimBack;
  return { top: least('top'), right: least('right'), bottom: least('bottom'), left: least('left') };
}

/** `TOP` and the title, to the right of the upper tick; nothing where the border has no room. */
function letters({ job, fonts }: CutJob, width: number, border: number): readonly Path[] {
  const text = `TOP  ${job.title}`;
  const size = Math.min(LARGEST_LETTERS, (width / 2 - 4 * CLEAR) / lettering(text, 1, fonts).width);
  if (size < SMALLEST_LETTERS || border < 2 * CLEAR + size) return [];
  const at = { x: width / 2 + 2 * CLEAR, y: CLEAR + size };
  return lettering(text, size, fonts).paths.map((path) => placedPath(path, (p) => plus(p, at)));
}
