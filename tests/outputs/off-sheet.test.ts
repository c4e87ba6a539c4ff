import { expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';
import { prepare } from '../../src/outputs/prepare.ts';
import { write } from '../../src/outputs/write.ts';
import '../../src/node.ts';

const SHOP = {
  file: 'shop.yaml',
  text: 'units: mm\nmachines: {laser: {kind: laser, kerf: 0.2}, knife: {kind: knife, offset: 0.25}}\n',
};

it.each(['svg', 'dxf', 'hpgl'])(
  'a file for a machine is not written as %s with a line beyond its bed',
  async (format) => {
    const solved = solveJob('units: mm\nmat: {outer: 160 x 230}\nopenings: [{size: 100 x 150}]\n', { shop: SHOP });
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const made = await prepare('cutfile', { jobs: [solved.value], shop: SHOP }, { machine: 'laser', format: [format] });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { drawn } = made.value;
    expect(await write(made.value)).toMatchObject({ ok: true });
    const drawings = drawn.drawings.map((each) => ({ ...each, drawing: { ...each.drawing, width: 100 } }));
    const narrow = await write({ ...made.value, drawn: { ...drawn, drawings } });
    // A plotter's drawing of the bed is refused as its file is.
    const refused = drawn.drawings.map(() => 'line-off-sheet');
    expect(narrow.ok ? [] : narrow.problems.map(({ code }) => code)).toEqual(refused);
  },
);
