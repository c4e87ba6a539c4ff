import type { BySide } from '../geometry/sides.ts';
import type { Units } from '../units/units.ts';
import { mmFromInches } from '../units/units.ts';
import type { Board } from './board.ts';
import type { Guide } from './guide.ts';
import type { Head } from './head.ts';
import type { OperationSetting } from './machine.ts';
import type { Printer } from './printer.ts';

/**
 * Every value that a job or a shop may leave out, in mm. Where a job's bare numbers are inches, the round inch is
 * taken, else the round metric length beside it.
 */
export const metric = (units: Units): boolean => units !== 'in';

const either = (units: Units, inches: number, mm: number): number => (metric(units) ? mm : mmFromInches(inches));

/** The unit of bare numbers where none is named: the trade's stock sizes are inches (common practice, no source). */
export const UNITS: Units = 'in';

/** 4-ply board measures 1.270–1.524 mm (S. Saitzyk, Art Hardware, 1987); 1.4 is its middle. */
export const BOARD_THICKNESS = 1.4;
/** The usual window board (Library of Congress, Guide to Preservation Matting and Framing: 4-ply at least). */
export const BOARD_PLIES = 4;
/** Off-white, and a white core: common practice, no source. */
export const BOARD_COLOUR = '#f4f1e8';
export const BOARD_CORE = 'white';

/** What a layer is made of that names no board. */
export const BOARD: Board = {
  id: 'default-4-ply',
  name: '4-ply board',
  thickness: BOARD_THICKNESS,
  plies: BOARD_PLIES,
  colour: BOARD_COLOUR,
  core: BOARD_CORE,
  sheets: [],
  directional: false,
};

/** Degrees; the usual bevel (common practice, no source). */
export const BEVEL = 45;

/** The wished overrun of a head that was never calibrated (common practice, no source). */
export const OVERRUN = 0.25;

/** Twice the spread of a head that was calibrated: few ends then hang on to the board (common practice, no source). */
export const overrun = (spread: number | undefined): number =>
  spread === undefined ? OVERRUN : Math.max(0.01, 2 * spread);

/** A pull head whose border lies under a bar at the left, without offsets: what is uncalibrated has none. */
export const HEAD: Head = {
  id: 'default',
  bevel: BEVEL,
  opening: 'left',
  straightedge: 0,
  straightedgeOn: 'border',
  start: [{ offset: 0 }],
  stop: [{ offset: 0 }],
  overrun: OVERRUN,
  calibrated: false,
};

/** A scale of sixteenths, or of millimetres, that reads true (common practice, no source). */
export const guide = (units: Units): Guide => ({ graduation: either(units, 1 / 16, 1), a: 0, b: 1 });

/** Kept short of every edge that touches guide or square (common practice, no source). */
export const trimBack = (units: Units, index: number, stack: 'together' | 'apart'): number =>
  index > 0 && stack === 'together' ? either(units, 1 / 8, 3) : 0;

/** Over all, in the rebate: 1–3 mm by size (Fine Art Trade Guild, framing standards); the upper end. */
export const clearance = (units: Units): number => either(units, 1 / 8, 3);

/** A frame covers nothing of the mat where nothing is said. */
export const LIP = 0;

/** Adding up where the shop says no more. */
export const PRICES = { decimals: 2, boards: 'share' } as const;

/** The usual full sheet of mat board: common practice, no source. */
export const SHEET = { width: mmFromInches(32), height: mmFromInches(40) };

/** Sheets are taken as they come and cut with a knife; what would hold no mat of a usual size is waste (common practice, no source). */
export const stock = (units: Units) => ({
  trim: allSides(0),
  kerf: 0,
  leastOffcut: { width: either(units, 5, 130), height: either(units, 7, 180) },
  factoryEdge: false,
  falloutMargin: either(units, 1 / 8, 3),
});

export const COUNT = 1;
export const SHAPE = 'rectangle';
/** A float shows to the innermost edge; all else is measured on the face, where it is marked. */
export const measure = (floated: boolean): 'face' | 'sight' => (floated ? 'sight' : 'face');
export const SNAP = false;
export const STACK = 'together';
export const JOIN = 'lap';
export const TRANSFER = 'prick';

/** The paper of the office printer at hand (common practice, no source). */
export const paper = (units: Units): string => (metric(units) ? 'a4' : 'letter');
export const margin = (units: Units): number => either(units, 1 / 4, 6);
/** Wide enough to glue or tape two sheets (common practice, no source). */
export const lap = (units: Units): number => either(units, 1 / 2, 12);
/** Paper of 80 g/m² (common practice, no source). */
export const PAPER_THICKNESS = 0.1;

export const allSides = <T>(value: T): BySide<T> => ({ top: value, right: value, bottom: value, left: value });

/** Prints true up to the edge, for all that is known. */
export const printer = (id: string): Printer => ({ id, x: 1, y: 1, margin: allSides(0) });

const operation = (layer: string, colour: string, pen: number): OperationSetting => ({ layer, colour, pen });

/** What a machine of which nothing is said is taken for; the colours are our own and mean nothing to any driver. */
export const MACHINE = {
  gap: 5,
  up: 'back',
  marks: true,
  notes: true,
  format: { laser: 'svg', knife: 'hpgl', bevel: 'dxf' },
  dialect: 'r12',
  tolerance: 0.01,
  line: 0.1,
  origin: 'corner',
  lift: 0.5,
  sendSpeeds: false,
  comments: true,
  overcut: 1,
  lead: 3,
  operations: {
    mark: operation('mark', '#009030', 3),
    registration: operation('registration', '#303030', 4),
    score: operation('score', '#e08000', 2),
    inner: operation('inner', '#0060c0', 1),
    outer: operation('outer', '#c00040', 1),
    bevel: operation('bevel', '#8020c0', 1),
    note: operation('note', '#a0a0a0', 0),
  },
} as const satisfies Record<string, unknown>;

/** Seen width of a groove, and of a line drawn with a ruling pen (common practice, no source). */
export const lineWidth = (units: Units, kind: 'groove' | 'ink'): number =>
  kind === 'groove' ? either(units, 1 / 16, 1.5) : 0.5;

/** Between letters and islands: narrower paper board tears when it is lifted (common practice, no source). */
export const bridge = (units: Units): number => either(units, 1 / 16, 2);
