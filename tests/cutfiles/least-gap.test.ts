import { expect, it } from 'vitest';
import { laser } from '../../src/cutfiles/laser.ts';
import { build } from '../../src/index.ts';
import type { LaserMachine } from '../../src/shop/machine.ts';
import { plainMachine } from '../../src/shop/machine.ts';

it('a beam needs nothing between two blanks but its kerf, which is its width', async () => {
  const machine: LaserMachine = { ...(plainMachine('laser') as LaserMachine), kerf: { x: 0.2, y: 0.3 } };
  expect([laser.leastGap(machine), laser.reach(machine), laser.width(machine)]).toEqual([
    0,
    0.15,
    { width: 0.2, height: 0.3 },
  ]);
  const job =
    'units: mm\nmat: {border: 50, layers: [{}, {reveal: 6}]}\nopenings: [{size: 100 x 100}]\nbench: {stack: apart}\n';
  const shop =
    'units: mm\nmachines: {m: {kind: laser, outside: true, gap: 0, kerf: 0.2, bed: 900 x 600, marks: false, notes: false}}\n';
  const made = await build(job, {
    shop: { text: shop, file: 'shop.yaml' },
    documents: ['cutfile'],
    machine: 'm',
    together: true,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const [one, other] = made.value.report.cutfiles![0]!.boards;
  const [x, y] = [Math.abs(one!.x - other!.x), Math.abs(one!.y - other!.y)];
  // Side by side or one above the other, with one kerf between them.
  expect(Math.max(x, y)).toBeCloseTo((x > y ? one!.width : one!.height) + 0.2, 6);
});
