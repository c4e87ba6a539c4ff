import { beforeAll, describe, expect, it, vi } from 'vitest';
import { face, faceSvg, type Solved, solveJob } from '../../src/index.ts';

const JOB = `units: mm
mat: {layers: [{board: {name: Bone, thickness: 1.4, colour: "#efe9dc"}}], frame: {inside: 303 x 403, clearance: 3, lip: 6, width: 22, colour: "#203040"}}
openings: [{artwork: 100 x 150, picture: heron.png}]
`;

let solved: Solved;
beforeAll(() => {
  const made = solveJob(JOB);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  solved = made.value;
});

describe('the face of a piece', () => {
  it('is as large as the framed piece, in its colours, and asks for no picture', async () => {
    const made = await face(solved);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { width, height, view, groups, pens } = made.value;
    // The rebate, which is 3 mm larger than the mat, less the lip on both sides, and the frame on both.
    expect([width, height]).toEqual([303 - 12 + 44, 403 - 12 + 44]);
    expect(view).toBe('face');
    const items = groups.flatMap((group) => group.items);
    const fills = items.flatMap((item) => (item.kind === 'path' && item.fill !== undefined ? [item.fill] : []));
    expect(fills).toEqual(expect.arrayContaining(['#efe9dc', '#203040']));
    expect(items.some((item) => item.kind === 'picture')).toBe(false);
    for (const item of items) if ('pen' in item && item.pen !== undefined) expect(pens[item.pen]).toBeDefined();
  });

  it('is refused as SVG where there is nothing to build it in, and written where there is', async () => {
    vi.resetModules();
    const without = await import('../../src/index.ts');
    const refused = await without.faceSvg(solved);
    expect(refused.ok ? [] : refused.problems.map(({ code }) => code)).toEqual(['svg-window']);
    const made = await faceSvg(solved);
    expect(made.ok && made.value).toMatch(/^<svg [^>]*width="335mm" height="435mm"/);
  });
});
