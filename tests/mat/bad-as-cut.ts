import type { AsCutRequest } from '../../src/job/as-cut.ts';
import type { Job } from '../../src/job/job.ts';
import type { Row } from './bad-groups.ts';
import { framed, layers, sound, withArt } from './bad-jobs.ts';
import { all, opening } from './job.ts';

const mm = (width: number, height: number) => ({ width, height });
const cutAs = (job: Job, asCut: Partial<AsCutRequest>): Job => ({
  ...job,
  asCut: { blanks: [], openings: [], ...asCut },
});
const openingCut = (width: number, height: number, border = {}) => ({
  opening: 0,
  layer: 0,
  size: mm(width, height),
  border,
});

/** Jobs with something cut so that it cannot be saved. */
export const AS_CUT_ROWS: readonly Row[] = [
  [
    'as-cut-beyond-frame',
    'error',
    'asCut.outer',
    '1 mm more than the frame',
    cutAs(framed({}), { outer: mm(303, 400) }),
  ],
  [
    'as-cut-shape',
    'error',
    'asCut.openings[0]',
    'a polygon',
    cutAs(sound({ openings: [opening({ shape: 'polygon', fields: { sides: 4 }, size: mm(200, 200) })] }), {
      openings: [openingCut(201, 174)],
    }),
  ],
  [
    'as-cut-shape',
    'error',
    'asCut.openings[0].size',
    '201 mm wide and 200 mm high',
    cutAs(sound({ openings: [opening({ shape: 'circle', size: mm(200, 200) })] }), {
      openings: [openingCut(201, 200)],
    }),
  ],
  [
    'as-cut-layer',
    'error',
    'asCut.openings[0].layer',
    'nothing of under mat 1',
    cutAs(
      sound({
        openings: [opening({ size: mm(200, 300), steps: ['skip'] })],
        mat: { layers: layers({ reveal: 6 }) },
      }),
      { openings: [{ ...openingCut(201, 300), layer: 1 }] },
    ),
  ],
  [
    'as-cut-contradicts',
    'error',
    'asCut.openings[0].border',
    'difference 3 mm',
    cutAs(sound(), { openings: [openingCut(201, 300, { left: 50, right: 52 })] }),
  ],
  [
    'as-cut-uncovers',
    'error',
    'asCut.openings[0].size',
    'reaches 1 mm beyond',
    cutAs(withArt({ overlap: all(3), measure: 'sight' }), { openings: [openingCut(204.8, 296.8)] }),
  ],
];
