import { placedPath } from '../geometry/path.ts';
import { decor } from '../mat/decor.ts';
import type { Machine } from '../shop/machine.ts';
import type { Operation } from '../shop/operation.ts';
import type { CutJob, LaidBoard, Toolpath } from './model.ts';

/** How a kind of machine makes an ink line: a plotter's pen draws it, a beam scores it; a bevel head has nothing to draw with. */
const WAYS: Readonly<Record<Machine['kind'], Operation | undefined>> = {
  knife: 'ink',
  laser: 'score',
  bevel: undefined,
};

/** Ink lines are on the face: only a machine that sees it draws them. */
export const drawsInk = ({ kind, up }: Machine): boolean => up === 'face' && WAYS[kind] !== undefined;

/** The ink lines of the top mat, as they lie on the bed. */
export function inkLines(board: LaidBoard, { job, mat }: CutJob, machine: Machine): readonly Toolpath[] {
  const operation = WAYS[machine.kind];
  if (operation === undefined || !drawsInk(machine) || board.layer !== 1) return [];
  const { blankBox } = mat.layers[0]!;
  return decor(mat, job)
    .filter(({ request }) => request.kind === 'ink')
    .flatMap(({ opening, number, runs }) =>
      runs.map(
        (run, i): Toolpath => ({
          operation,
          path: placedPath(run, (p) => board.place({ x: p.x - blankBox.x, y: p.y - blankBox.y })),
          id: `ink-${opening + 1}-${number}${runs.length === 1 ? '' : `-${i + 1}`}`,
          reversible: true,
        }),
      ),
    );
}
