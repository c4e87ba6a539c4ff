import type { Job } from '../../src/job/job.ts';
import type { Board } from '../../src/shop/board.ts';
import { GROUP_ROWS, type Row } from './bad-groups.ts';
import { all, board, type Changes, jobOf, layer, opening } from './job.ts';

const mm = (width: number, height: number) => ({ width, height });

/** A sound job in mm: 300 × 400, window 200 × 300, border 50. */
export const sound = (changes: Changes = {}): Job =>
  jobOf({
    units: 'mm',
    openings: [opening({ size: mm(200, 300) })],
    ...changes,
    mat: { outer: mm(300, 400), ...changes.mat },
  });

export const withArt = (more: Parameters<typeof opening>[0], changes: Changes = {}): Job =>
  sound({ ...changes, openings: [opening({ artwork: mm(200, 300), ...more })] });

export const layers = (...more: Parameters<typeof layer>[0][]) => [layer(), ...more.map((each) => layer(each))];
const bevel = (angle: number, reverse = false) => ({ angle, reverse });
/** The sound job cut from one board. */
const onBoard = (of: Board): Job => sound({ mat: { layers: [layer({ board: of })] } });
export const framed = (frame: { clearance?: number; lip?: number }): Job =>
  sound({ mat: { outer: undefined as never, frame: { inside: mm(302, 402), clearance: 2, lip: 0, ...frame } } });
const together = { stack: 'together', snap: false } as const;

export const ROWS: readonly Row[] = [
  ['layers-count', 'error', 'mat.layers', 'no layer', sound({ mat: { layers: [] } })],
  ['openings-none', 'error', 'openings', 'no opening', sound({ openings: [] })],
  ...GROUP_ROWS,
  ['bevel-angle', 'error', 'mat.layers[0].bevel', '19°', sound({ mat: { layers: [layer({ bevel: bevel(19) })] } })],
  ['bevel-angle', 'error', 'mat.layers[1].bevel', '91°', sound({ mat: { layers: layers({ bevel: bevel(91) }) } })],
  [
    'bevel-angle',
    'error',
    'mat.layers[0].bevel',
    'NaN°',
    sound({ mat: { layers: [layer({ bevel: bevel(Number.NaN) })] } }),
  ],
  ['board-thickness', 'error', 'mat.layers[0].board', 'no thickness', onBoard(board(0))],
  [
    'reveal-top',
    'error',
    'mat.layers[0].reveal',
    'top mat has no reveal',
    sound({ mat: { layers: [layer({ reveal: 6 })] } }),
  ],
  [
    'overlap-without-artwork',
    'error',
    'openings[0].overlap',
    'an overlap but no artwork',
    sound({ openings: [opening({ size: mm(200, 300), overlap: all(5) })] }),
  ],
  [
    'overlap-without-artwork',
    'error',
    'openings[0].float',
    'a float but no artwork',
    sound({ openings: [opening({ float: {} })] }),
  ],
  ['overlap-and-float', 'error', 'openings[0].float', 'not both', withArt({ overlap: { top: 5 }, float: { left: 5 } })],
  [
    'weighting-ratio',
    'error',
    'mat.weighting.ratio',
    'ratio of 0',
    sound({ mat: { weighting: { kind: 'ratio', ratio: 0 } } }),
  ],
  ['size-not-finite', 'error', 'mat.border.top', 'NaN', sound({ mat: { border: { top: Number.NaN } } })],
  ['size-not-finite', 'error', 'mat.outer', 'Infinity', sound({ mat: { outer: mm(Number.POSITIVE_INFINITY, 400) } })],
  [
    'sizes-contradict',
    'error',
    'mat.outer',
    '300 mm is given, but the other sizes make 302 mm (difference 2 mm)',
    sound({ mat: { border: { left: 50, right: 52 } } }),
  ],
  ['sizes-not-enough', 'error', 'openings[0]', 'do not settle', sound({ openings: [opening()] })],
  ['sizes-not-enough', 'error', 'mat', 'do not settle', sound({ mat: { outer: undefined as never } })],
  [
    'opening-none',
    'error',
    'openings[0]',
    '-3.8 × 295.2 mm',
    sound({ openings: [opening()], mat: { border: { left: 150.5, top: 51 } } }),
  ],
  [
    'opening-none',
    'error',
    'openings[0]',
    '-0.8 × 297.2 mm',
    sound({ openings: [opening()], mat: { border: { left: 149, top: 50 } } }),
  ],
  [
    'strip-hidden',
    'error',
    'mat.layers[1].reveal',
    'reveal of 1.4 mm less 1.4 mm',
    sound({ mat: { layers: layers({ reveal: 1.4 }) } }),
  ],
  [
    'strip-hidden',
    'error',
    'mat.layers[1].reveal',
    'less 0 mm of bevel',
    sound({ mat: { layers: [layer({ bevel: bevel(45, true) }), layer({ reveal: -1 })] } }),
  ],
  [
    'strip-hidden',
    'error',
    'mat.layers[1]',
    'leaves -0.4 mm',
    sound({ mat: { border: { left: 49, top: 49 }, layers: layers({}) } }),
  ],
  [
    'strip-narrow',
    'warning',
    'mat.layers[1].reveal',
    'leaves 0.8 mm',
    sound({ mat: { layers: layers({ reveal: 2.2 }) } }),
  ],
  [
    'strip-narrow',
    'warning',
    'mat.layers[2].reveal',
    'under mat 2',
    sound({ mat: { layers: layers({ reveal: 5 }, { reveal: 2 }) } }),
  ],
  [
    'overlap-none',
    'error',
    'openings[0].overlap.left',
    '1 mm beyond the edge of the artwork at the left',
    withArt({ overlap: { ...all(5), left: -2.4 } }),
  ],
  [
    'overlap-none',
    'error',
    'openings[0]',
    '3.6 mm beyond the edge of the artwork at the right and left',
    withArt({ size: mm(210, 290) }),
  ],
  ['overlap-none', 'error', 'openings[0].overlap', 'on every side', withArt({ overlap: all(-5) })],
  ['overlap-narrow', 'warning', 'openings[0].overlap', '1.8 mm on every side', withArt({ overlap: all(0.4) })],
  [
    'overlap-narrow',
    'warning',
    'openings[0].overlap.top',
    '1.5 mm at the top',
    withArt({ overlap: { ...all(5), top: 1.5 }, measure: 'sight' }),
  ],
  [
    'float-none',
    'error',
    'openings[0].float',
    'covers the floated artwork by 0.4 mm on every side',
    withArt({ float: all(1) }),
  ],
  ['float-narrow', 'warning', 'openings[0].float', 'only 1 mm', withArt({ float: all(1), measure: 'sight' })],
  [
    'artwork-beyond-mat',
    'error',
    'openings[0].artwork',
    '310 × 300 mm reaches beyond the mat of 300 × 400 mm',
    withArt({ artwork: mm(310, 300), overlap: all(6) }),
  ],
  [
    'border-none',
    'error',
    'mat',
    '-5 mm at the right and left',
    sound({ openings: [opening({ size: mm(310, 300) })] }),
  ],
  ['border-hidden', 'error', 'mat', 'hides the border of 50 mm on every side', framed({ lip: 50 })],
  ['border-mostly-hidden', 'warning', 'mat', '24 mm of 50 mm', framed({ lip: 26 })],
  ['clearance-unusual', 'warning', 'mat.frame.clearance', '0.5 mm', framed({ clearance: 0.5 })],
  [
    'clearance-beyond-lip',
    'warning',
    'mat.frame.clearance',
    'clearance of 2 mm is more than the lip of 1 mm',
    framed({ lip: 1 }),
  ],
  ['diagonal-top-narrow', 'warning', 'mat.weighting', '41.67 mm', sound({ mat: { weighting: { kind: 'diagonal' } } })],
  [
    'together-not-short',
    'error',
    'mat.layers[1].trimBack',
    'no trim-back',
    sound({ mat: { layers: layers({ reveal: 5 }) }, bench: together }),
  ],
  [
    'together-no-tape',
    'error',
    'mat.layers[1].trimBack',
    '9.4 mm to tape',
    sound({ mat: { layers: layers({ reveal: 5, trimBack: 37 }) }, bench: together }),
  ],
  [
    'together-no-tape',
    'error',
    'mat.layers[1].trimBack',
    '9.9 mm to tape',
    withArt(
      {},
      {
        mat: {
          border: all(12),
          outer: undefined as never,
          layers: [layer({ bevel: bevel(45, true) }), layer({ reveal: 5, trimBack: 0.7 })],
        },
        bench: together,
      },
    ),
  ],
  [
    'together-no-tape',
    'error',
    'mat.layers[2].trimBack',
    '9.4 mm to tape to under mat 1',
    sound({
      mat: { border: { left: 30, top: 30 }, layers: layers({ reveal: 5, trimBack: 20 }, { trimBack: 27 }) },
      bench: together,
    }),
  ],
  [
    'together-no-tape',
    'error',
    'mat.layers[2].trimBack',
    '5.4 mm to tape to under mat 1',
    sound({
      mat: { border: { left: 30, top: 30 }, layers: layers({ reveal: 5, trimBack: 31 }, { trimBack: 3 }) },
      bench: together,
    }),
  ],
  [
    'trim-back-unused',
    'warning',
    'mat.layers[1].trimBack',
    'full size',
    sound({ mat: { layers: layers({ reveal: 5, trimBack: 3 }) } }),
  ],
  [
    'trim-back-unused',
    'warning',
    'mat.layers[0].trimBack',
    'full size',
    sound({ mat: { layers: [layer({ trimBack: 3 })] }, bench: together }),
  ],
  ['board-thin', 'warning', 'mat.layers[0].board', '1.1 mm thick', onBoard(board(1.1))],
  ['board-thick', 'warning', 'mat.layers[0].board', '5 mm thick', onBoard(board(5))],
  [
    'blank-beyond-sheets',
    'warning',
    'mat.layers[0].board',
    'the largest is 200 × 500 mm',
    onBoard(board(1.4, { sheets: [mm(100, 100), mm(200, 500)] })),
  ],
  [
    'blank-beyond-sheets',
    'warning',
    'mat.layers[0].board',
    '300 × 400 mm',
    onBoard(board(1.4, { sheets: [mm(500, 350)], directional: true })),
  ],
  ['mat-too-large', 'error', 'mat', '6200 × 6300 mm', sound({ mat: { outer: undefined as never, border: all(3000) } })],
  [
    'snap-not-possible',
    'warning',
    'openings[0].size',
    'width of 200 mm is given',
    sound({ bench: { snap: true, graduation: 3 } }),
  ],
  [
    'snap-not-possible',
    'warning',
    'mat.border.left',
    '50.5 mm is given',
    withArt({}, { mat: { border: { left: 50.5 } }, bench: { snap: true, graduation: 1 } }),
  ],
  [
    'snap-not-possible',
    'warning',
    'bench.snap',
    'leaves the artwork its room',
    withArt({ artwork: mm(280, 380), float: all(2), measure: 'sight' }, { bench: { snap: true, graduation: 9 } }),
  ],
];
