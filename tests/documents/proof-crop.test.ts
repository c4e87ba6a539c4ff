import { expect, it } from 'vitest';
import { cropOf } from '../../src/documents/proof/crop.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';

/** The artwork lies at 100, 125; its sight is 5 mm inside of it, and half a millimetre more of the picture goes under the board. */
const solved = solveJob(
  'units: mm\nmat: {outer: 300 x 400}\nopenings: [{artwork: 100 x 150, overlap: 5, measure: sight}]\n',
);
if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
const opening = solved.value.mat.openings[0]!;

it.each([
  ['as the artwork', { width: 1000, height: 1500 }, [45, 45], false],
  // 10 pixels a millimetre across, so 200 mm high: 25 mm of it lie above the artwork, and as much below.
  ['taller', { width: 1000, height: 2000 }, [45, 25 * 10 + 45], true],
  // 10 pixels a millimetre down, so 300 mm wide: 100 mm on either side.
  ['wider', { width: 3000, height: 1500 }, [100 * 10 + 45, 45], true],
])('a picture of a shape %s covers it, middle on middle, and the rest is cut off', (_, picture, [x, y], cut) => {
  const found = cropOf(opening, picture)!;
  expect(found.cut).toBe(cut);
  const box = (b: typeof found.box) => [b.x, b.y, b.width, b.height].map((n) => Number(n.toFixed(6)));
  expect(box(found.pixels)).toEqual([x, y, 910, 1410]);
  expect(box(found.box)).toEqual([104.5, 129.5, 91, 141]);
});
