import type { Job } from '../../src/job/job.ts';
import type { LetteringRequest } from '../../src/job/lettering.ts';
import type { OpeningRequest } from '../../src/job/opening.ts';
import { all, type Changes, jobOf, layer, opening } from './job.ts';

export type Row = readonly [code: string, severity: 'error' | 'warning', path: string, says: string, job: Job];

const mm = (width: number, height: number) => ({ width, height });
const named = (name: string, more: Partial<OpeningRequest> = {}) => opening({ name, size: mm(80, 100), ...more });

/** Two windows of 80 × 100 in a row on 300 × 400. */
const two = (first: Partial<OpeningRequest>, second: Partial<OpeningRequest>, changes: Changes = {}): Job =>
  jobOf({
    units: 'mm',
    openings: [named('Heron', first), named('Tern', second)],
    ...changes,
    mat: { outer: mm(300, 400), ...changes.mat },
  });
const one = (more: Partial<OpeningRequest>, changes: Changes = {}): Job =>
  jobOf({
    units: 'mm',
    openings: [named('Heron', more)],
    ...changes,
    mat: { outer: mm(300, 400), ...changes.mat },
  });
const rows = (counts: readonly number[]): Changes => ({
  arrange: { rows: counts, columns: false, align: 'centre', fill: false },
});
const at = (left: number, top: number) => ({ place: { left, top } });
const below = (name: string) => ({ place: { below: { opening: name, gap: 20 } } });
const double = { layers: [layer(), layer({ reveal: 6 })] };
const uneven = { top: 6, right: 6, bottom: 10, left: 6 };
/** Between the first two of an hourglass 10 wide at its waist. */
const waist = 'outline';
const hourglass = {
  start: { x: 0, y: 0 },
  segments: [
    { kind: 'line', to: { x: 80, y: 0 } },
    { kind: 'line', to: { x: 45, y: 50 } },
    { kind: 'line', to: { x: 80, y: 100 } },
    { kind: 'line', to: { x: 0, y: 100 } },
    { kind: 'line', to: { x: 35, y: 50 } },
    { kind: 'line', to: { x: 0, y: 0 } },
  ],
  closed: true,
} as const;

const text = (words: string, more: Partial<LetteringRequest> = {}): Changes => ({
  lettering: [
    {
      text: words,
      weight: 'bold',
      height: 20,
      spacing: 2,
      bridge: 2,
      islands: 'bridge',
      edge: 'square',
      place: { bottom: 30 },
      ...more,
    },
  ],
});

/** Wrong layouts and shapes, each with its clear error. */
export const GROUP_ROWS: readonly Row[] = [
  [
    'line-off-mat',
    'error',
    'openings[0].lines[0]',
    'the groove 120 mm round Heron runs off',
    one({ decor: [{ kind: 'groove', distance: 120, width: 1.5, angle: 45 }] }),
  ],
  ['opening-name-twice', 'error', 'openings[1].name', 'two openings are called Heron', two({}, { name: 'Heron' })],
  ['arrange-count', 'error', 'arrange.rows', 'rows hold 3 openings, but there are 2', two({}, {}, rows([2, 1]))],
  [
    'arrange-count',
    'error',
    'arrange.rows',
    'there are 1 without a place of their own',
    two({}, at(100, 200), rows([2])),
  ],
  [
    'border-and-places',
    'error',
    'mat.border',
    'every opening has a place',
    two(at(20, 20), at(150, 20), { mat: { border: { left: 20 } } }),
  ],
  ['below-unknown', 'error', 'openings[1].place.below', 'no opening is called Herron', two({}, below('Herron'))],
  ['below-ring', 'error', 'openings[0].place.below', 'lies below Heron itself', two(below('Tern'), below('Heron'))],
  ['below-ring', 'error', 'openings[0].place.below', 'Heron itself', one(below('Heron'))],
  [
    'reveal-by-side',
    'error',
    'mat.layers[1].reveal',
    'Heron, oval, must be the same all round',
    one({ shape: 'oval' }, { mat: { layers: [layer(), layer({ reveals: uneven })] } }),
  ],
  [
    'reveal-by-side',
    'error',
    'openings[0].reveals[0]',
    'round-arch, may be larger at the bottom alone',
    one({ shape: 'round-arch', steps: [{ ...uneven, top: 9 }] }, { mat: double }),
  ],
  [
    'reveals-count',
    'error',
    'openings[0].reveals',
    'Heron has 2 reveals, the mat has 1',
    one({ steps: ['same', 'same'] }, { mat: double }),
  ],
  [
    'together-skip',
    'error',
    'openings[0].reveals[0]',
    'shows nothing of under mat 1',
    two({ steps: ['skip'] }, {}, { mat: double, bench: { stack: 'together' } }),
  ],
  [
    'spacer-top',
    'error',
    'mat.layers[0].spacer',
    'no layer above it',
    one({}, { mat: { layers: [layer({ spacer: 3 })] } }),
  ],
  [
    'together-spacer',
    'error',
    'mat.layers[1].spacer',
    'lies on a spacer',
    one({}, { mat: { layers: [layer(), layer({ reveal: 6, spacer: 3, trimBack: 3 })] }, bench: { stack: 'together' } }),
  ],
  [
    'shape-unfit',
    'error',
    'openings[0].radius',
    'Heron has corners',
    one({ shape: 'rounded', fields: { radius: 41 } }),
  ],
  ['shape-unfit', 'error', 'openings[0].clip', 'cut off by half', one({ shape: 'clipped', fields: { clip: 40 } })],
  ['shape-unfit', 'error', 'openings[0].notch', 'steps', one({ shape: 'notched', fields: { notch: 14, steps: 3 } })],
  ['shape-unfit', 'error', 'openings[0].rise', 'rises more than half', one({ shape: 'arch', fields: { rise: 41 } })],
  [
    'shape-unfit',
    'error',
    'openings[0].shape',
    'lower than half of its width',
    one({ shape: 'round-arch', size: mm(180, 80) }),
  ],
  [
    'sizes-contradict',
    'error',
    'openings[0].size',
    'opening height of Heron 100 mm is given, but the other sizes make 80 mm (difference 20 mm)',
    two({ shape: 'circle' }, {}),
  ],
  [
    'outline-falls-apart',
    'error',
    'openings[0].shape',
    'Heron, outline, is so narrow',
    one(
      { shape: waist, fields: { outline: hourglass } },
      { mat: { layers: [layer({ board: { ...layer().board, thickness: 5.5 } })] } },
    ),
  ],
  [
    'bar-narrow',
    'warning',
    'openings[1]',
    'Heron and Tern in the top mat leave a bar of 4 mm, below 6 mm it bends easily',
    two(at(40, 40), at(124, 40)),
  ],
  [
    'openings-near',
    'error',
    'openings[1]',
    'Heron and Tern in the top mat come within 1.9 mm of each other, 2 mm is the least',
    two(at(40, 40), at(121.9, 40)),
  ],
  [
    'openings-near',
    'error',
    'openings[1]',
    'Heron and Tern in the top mat come within 12 mm of each other, 15 mm is the least',
    two(at(40, 40), at(40, 152), { mat: { leastBar: 15 } }),
  ],
  [
    'bevels-meet',
    'error',
    'openings[1]',
    'the bevels of Heron and Tern in the top mat would meet',
    two(at(40, 40), at(100, 90)),
  ],
  [
    'bevels-meet',
    'error',
    'openings[1]',
    'bevels of Heron and Tern',
    two({ ...at(40, 40), size: mm(200, 300) }, { ...at(100, 100), shape: 'oval' }),
  ],
  [
    'border-tears',
    'error',
    'openings[1].place',
    'Tern runs off the top mat at the right, 2 mm is the least: a narrower border tears',
    two(at(20, 20), at(230, 20)),
  ],
  [
    'border-narrow',
    'warning',
    'openings[1].place',
    'Tern leaves 5.5 mm of the top mat at the right, below 6 mm a border bends easily',
    two(at(20, 20), at(214.5, 20)),
  ],
  [
    'opening-beyond-border',
    'error',
    'openings[1].place',
    "the frame's lip hides 6 mm",
    two(at(20, 20), at(216, 20), {
      mat: { outer: undefined as never, frame: { nominal: mm(300, 400), clearance: 0, lip: 6 } },
    }),
  ],
  [
    'sizes-contradict',
    'error',
    'mat.outer',
    'outer width 300 mm is given, but the other sizes make 320 mm',
    two(
      {},
      {},
      { mat: { border: all(50) }, arrange: { rows: [2], columns: false, align: 'centre', fill: false, across: 60 } },
    ),
  ],
  [
    'groove-deep',
    'error',
    'openings[0].lines[0].width',
    'would be 5 mm deep, the board is',
    one({ decor: [{ kind: 'groove', distance: 20, width: 10, angle: 45 }] }),
  ],
  [
    'line-side-none',
    'error',
    'openings[0].lines[0].sides',
    'round Heron, oval, has no straight top side',
    one({ shape: 'oval', decor: [{ kind: 'ink', distance: 20, width: 1, angle: 45, sides: ['top'] }] }),
  ],
  [
    'lettering-unfit',
    'error',
    'lettering[0].text',
    'the lettering HERON: the inside of R would fall out',
    one({}, text('HERON', { islands: 'refuse' })),
  ],
  [
    'lettering-near',
    'error',
    'lettering[0]',
    'the lettering HEN comes within 3 mm of Heron in the top mat, 6 mm is the least',
    one(at(110, 40), text('HEN', { place: { below: { opening: 'Heron', gap: 3 } } })),
  ],
  ['lettering-off-mat', 'error', 'lettering[0]', 'runs off the part', one({}, text('HEN', { place: { bottom: -4 } }))],
  [
    'letters-near',
    'error',
    'lettering[0].spacing',
    'in the lettering HILL',
    one({}, text('HILL', { bridge: 9, islands: 'refuse' })),
  ],
];
