import { grown, union } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { polygon } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { LaidBoard, Toolpath } from './model.ts';

/** Between a target and what is cut. */
const CLEAR = 2;

/** Room that targets take beyond whatever else lies around the blanks. */
export const targetRoom = (size: number): number => size + CLEAR;

/**
 * Targets that are printed for a cutter to find before it cuts: a cross in a ring, at three corners around everything, so
 * that no turn of the sheet looks like another. Three places settle a shift, a turn and two scales.
 */
export function targets(boards: readonly LaidBoard[], beyond: number, size: number): readonly Toolpath[] {
  const around = grown(union(boards.map(({ outline }) => pathBox(outline))), beyond + CLEAR / 2 + size / 2);
  const corners: readonly (readonly [string, Point])[] = [
    ['upper-left', { x: around.x, y: around.y }],
    ['lower-left', { x: around.x, y: around.y + around.height }],
    ['lower-right', { x: around.x + around.width, y: around.y + around.height }],
  ];
  return corners.flatMap(([name, at]) => target(name, at, size));
}

function target(name: string, at: Point, size: number): readonly Toolpath[] {
  const half = size / 2;
  const radius = size / 4;
  const draw = (part: string, path: Toolpath['path']): Toolpath => ({
    operation: 'registration',
    id: `target-${name}-${part}`,
    reversible: true,
    path,
  });
  const right = { x: at.x + radius, y: at.y };
  return [
    draw(
      'across',
      polygon(
        [
          { x: at.x - half, y: at.y },
          { x: at.x + half, y: at.y },
        ],
        false,
      ),
    ),
    draw(
      'up',
      polygon(
        [
          { x: at.x, y: at.y - half },
          { x: at.x, y: at.y + half },
        ],
        false,
      ),
    ),
    draw('ring', { start: right, segments: [{ kind: 'arc', to: right, centre: at, clockwise: true }], closed: true }),
  ];
}
