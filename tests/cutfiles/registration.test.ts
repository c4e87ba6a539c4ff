import { expect, it } from 'vitest';
import type { LaidBoard, Toolpath } from '../../src/cutfiles/model.ts';
import { targetRoom, targets } from '../../src/cutfiles/registration.ts';
import { polygon } from '../../src/geometry/path.ts';

/** Of a blank that is 100 × 60 mm and lies at 10, 20. */
const outline = polygon([
  { x: 10, y: 20 },
  { x: 110, y: 20 },
  { x: 110, y: 80 },
  { x: 10, y: 80 },
]);

it('targets are crosses of their size in rings of half of it, clear of all that is cut by 1 mm, at three corners', () => {
  const made = targets([{ outline } as LaidBoard], 3, 8);
  // 3 mm that the tool takes beyond the blank, 1 mm clear and half a target.
  const places = { 'upper-left': [2, 12], 'lower-left': [2, 88], 'lower-right': [118, 88] } as const;
  const of = (id: string): Toolpath => made.find((each) => each.id === id)!;
  for (const [name, [x, y]] of Object.entries(places)) {
    const [across, up, ring] = ['across', 'up', 'ring'].map((part) => of(`target-${name}-${part}`).path);
    expect([across!.start, across!.segments[0]!.to]).toEqual([
      { x: x - 4, y },
      { x: x + 4, y },
    ]);
    expect([up!.start, up!.segments[0]!.to]).toEqual([
      { x, y: y - 4 },
      { x, y: y + 4 },
    ]);
    expect(ring).toMatchObject({ start: { x: x + 2, y }, closed: true });
    expect(ring!.segments).toMatchObject([{ kind: 'arc', centre: { x, y }, to: { x: x + 2, y } }]);
  }
  expect(made).toHaveLength(9);
  expect(made.every(({ operation, reversible }) => operation === 'registration' && reversible)).toBe(true);
  // Where a bed has to hold them too.
  expect(targetRoom(8)).toBe(10);
});
