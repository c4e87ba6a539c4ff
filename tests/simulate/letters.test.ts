import { expect, it } from 'vitest';
import { patterns, worked } from './pattern.ts';

/** Steps of 9 mm: ticks of neighbouring sides lie side by side, two of them 8.6 mm apart, others 0.4 mm. */
const JOB = `units: mm
mat: {outer: 201 x 292, layers: [{board: {name: b0, thickness: 1.4}, bevel: {angle: 60, reverse: true}}]}
openings: [{shape: notched, notch: 9, steps: 2, size: 133 x 154, place: {left: 33, top: 67}}]
bench: {head: h, stack: together}
print: {transfer: cut-through, paperThickness: 0.1}
`;
const SHOP =
  'units: mm\nheads: {h: {bevel: 45, opening: right, start: 0, stop: 0.9, overrun: 0.25, straightedge: 28, straightedgeOn: opening}}\n';

it('letters among ticks that lie side by side are each nearest to their own', async () => {
  const [sheet] = (await patterns({ text: JOB }, SHOP))!;
  const board = { thickness: 1.4, angle: 60, reverse: true };
  const head = { opening: 'right', start: 0, stop: 0.9, overrun: 0.25 } as const;
  const { cuts, read, faults } = worked(sheet!, board, 0.1, head, { offset: 28, on: 'opening' });
  expect(faults).toEqual([]);
  expect(cuts).toHaveLength(20);
  expect(read).toBeGreaterThan(3);
});
