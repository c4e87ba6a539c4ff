import { expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';

/** The bar rests on the paper: it lifts the head as a thicker board would. 60° tells tan from cot. */
it('counts paper that stays on into the setting of the guide', () => {
  const guides = (transfer: string) => {
    const solved = solveJob(
      `units: mm\nmat: {outer: 300 x 400, border: 60, layers: [{board: b, bevel: 60}]}\nopenings: [{}]\nbench: {head: h}\nprint: {transfer: ${transfer}, paperThickness: 0.2}`,
      {
        file: 'job.yaml',
        shop: {
          file: 'shop.yaml',
          text: 'boards: {b: {thickness: 2 mm}}\nheads: {h: {bevel: 60}}\nguide: {setAt: 1.4 mm}',
        },
      },
    );
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    return solved.value.strokes.map((stroke) => stroke.guide);
  };
  for (const guide of guides('prick')) expect(guide).toBeCloseTo(60 + (2 - 1.4) / Math.tan(Math.PI / 3), 9);
  for (const guide of guides('cut-through')) expect(guide).toBeCloseTo(60 + (2.2 - 1.4) / Math.tan(Math.PI / 3), 9);
});
