import * as z from 'zod/mini';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import { error, type Problem } from '../problems/problem.ts';
import { converted, described, needed, number, oneOf, record, whole, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import type { LengthUnit } from '../units/units.ts';
import { bevelAngle } from './bevel-angle.ts';
import { endFields, endsFrom, HEAD, type OffsetAt } from './head.ts';
import {
  OPERATIONS,
  type Operation,
  type OperationSetting,
  operationsFrom,
  operationsSchema,
  speed,
} from './operation.ts';

export const MACHINE_KINDS = ['laser', 'knife', 'bevel'] as const;
export type MachineKind = (typeof MACHINE_KINDS)[number];

export const CUT_FORMATS = ['svg', 'dxf', 'hpgl'] as const;
export type CutFormat = (typeof CUT_FORMATS)[number];
export const DIALECTS = ['r12', 'r2000'] as const;
export type Dialect = (typeof DIALECTS)[number];

interface AnyMachine {
  readonly id: string;
  /** Undefined where the bed is not known: then nothing is checked against it. */
  readonly bed?: Size;
  /** Between blanks that lie on the bed together; 0 lets neighbours share a cut. */
  readonly gap: number;
  /** Which side of the board lies up. */
  readonly up: 'back' | 'face';
  /** False where the board is trimmed to its outer size before. */
  readonly outside: boolean;
  /** Centre ticks, hinge and title on the back of the board. */
  readonly marks: boolean;
  readonly notes: boolean;
  /** The thickest board that it can cut. */
  readonly thickest?: number;
  readonly format: CutFormat;
  readonly dialect: Dialect;
  /** How far arcs and chords that stand in for a curve may lie from it, mm. */
  readonly tolerance: number;
  /** Width of the lines in a file, mm. */
  readonly line: number;
  /** Length that it moves over the length that it was told, by axis; corrected in a plotter's file alone. */
  readonly scale: { readonly x: number; readonly y: number };
  readonly origin: 'corner' | 'centre';
  /** Without cutting, mm/s. */
  readonly travel?: number;
  /** For each time that the tool goes down and up, seconds. */
  readonly lift: number;
  /** Whether a plotter's file sets speeds. */
  readonly sendSpeeds: boolean;
  /** Whether a plotter's file holds its words, for plotters that know the comment instruction. */
  readonly comments: boolean;
  readonly operations: Readonly<Record<Operation, OperationSetting>>;
}

export interface LaserMachine extends AnyMachine {
  readonly kind: 'laser';
  /** Full width of what the beam takes away, measured across a cut that runs up (x) and one that runs across (y). */
  readonly kerf: { readonly x: number; readonly y: number };
  /** Bridges that hold each fallout. */
  readonly tabs?: { readonly count: number; readonly width: number };
}

export interface KnifeMachine extends AnyMachine {
  readonly kind: 'knife';
  /** How far the blade's tip trails the axis that it swivels about. */
  readonly offset: number;
  /** How far a closed cut is followed past its beginning. */
  readonly overcut: number;
  /** Radius of the arc by which the blade comes in from the waste. */
  readonly lead: number;
  /** All but the last are light ones. */
  readonly passes: number;
  /** Size of the targets that are printed for the cutter to find. */
  readonly registration?: number;
}

export interface BevelMachine extends AnyMachine {
  readonly kind: 'bevel';
  /** Degrees between blade and face; undefined where it can be set to any. */
  readonly bevel?: number;
  /** The hand of the travel on which the opening lies while a normal bevel is cut with the back up. */
  readonly opening: 'left' | 'right';
  readonly start: readonly OffsetAt[];
  readonly stop: readonly OffsetAt[];
  readonly overrun: number;
  readonly calibrated: boolean;
}

export type Machine = LaserMachine | KnifeMachine | BevelMachine;

/** What a machine of which nothing is said is taken for. */
const USUAL = {
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
} as const;

/** A cutting machine. Which keys go with which kind is told in `machine.ts`. */
export function machineSchema(unit: LengthUnit) {
  const { length, size } = lengthFields(unit);
  const nearOne = (axis: string) =>
    number(`Length moved over length told, ${axis}`, [1.0004], 0.9, 1.1, 'a number near 1');
  const scale = record({ x: z.optional(nearOne('across')), y: z.optional(nearOne('up')) }, 'a map: x, y');
  const width = (about: string) => length(about, ['0.2 mm'], { least: 0, most: 3 });
  const across = needed(width('Across a cut that runs up the bed'));
  const up = needed(width('Across a cut that runs across the bed'));
  const KERF = 'a length, or a map: x, y';
  const both = converted(width('In every direction'), (mm) => ({ x: mm, y: mm }));
  const tabs = record(
    {
      count: needed(whole('Of every opening', [4], 1, 48)),
      width: needed(length('Of each', ['0.5 mm'], { least: 0.05, most: 20 })),
    },
    'a map: count, width',
  );
  const machine = record(
    {
      kind: z.optional(oneOf('What it cuts with', MACHINE_KINDS)),
      bed: z.optional(size('What it can reach, width x height', ['600 x 400 mm'], { least: 20 })),
      gap: z.optional(length('Between boards that lie on the bed together', ['5 mm'], { least: 0, most: 200 })),
      up: z.optional(oneOf('The side of the board that lies up', ['back', 'face'])),
      outside: z.optional(yesNo('False where the board is trimmed to its outer size before')),
      marks: z.optional(yesNo('Centre, hinge and title scored on the back')),
      notes: z.optional(yesNo('Words and a 100 mm line on a layer that is not cut')),
      thickest: z.optional(length('The thickest board that it cuts', ['2 mm'], { least: 0.05, most: 50 })),
      format: z.optional(oneOf('The file that it takes', CUT_FORMATS)),
      dialect: z.optional(oneOf('Of DXF', DIALECTS)),
      tolerance: z.optional(
        length('How far arcs or chords may lie from a curve', ['0.01 mm'], { least: 0.001, most: 0.5 }),
      ),
      line: z.optional(length('Width of the lines in a file', ['0.1 mm'], { least: 0.001, most: 1 })),
      scale: z.optional(described(scale, 'Corrected in a plotter’s file')),
      origin: z.optional(oneOf('Where a plotter counts from', ['corner', 'centre'])),
      travel: z.optional(speed('How fast it goes without cutting')),
      lift: z.optional(number('Seconds for each time down and up', [0.4], 0, 60, 'a number of seconds')),
      sendSpeeds: z.optional(yesNo('Whether a plotter’s file sets speeds')),
      comments: z.optional(yesNo('Whether a plotter’s file holds words; not every plotter knows comments')),
      operations: z.optional(operationsSchema()),
      kerf: z.optional(
        described(z.union([both, record({ x: across, y: up }, KERF)], KERF), 'What the beam takes away', ['0.2 mm']),
      ),
      tabs: z.optional(described(tabs, 'Bridges that hold each fallout', [{ count: 4, width: '0.5 mm' }])),
      offset: z.optional(width('How far the tip of the knife trails its axis')),
      overcut: z.optional(length('How far a cut goes past its beginning', ['1 mm'], { least: 0, most: 50 })),
      lead: z.optional(length('Radius by which the knife comes in from the waste', ['3 mm'], { least: 0.2, most: 50 })),
      passes: z.optional(whole('All but the last are light ones', [2], 1, 6)),
      registration: z.optional(length('Size of the printed targets', ['8 mm'], { least: 2, most: 50 })),
      bevel: z.optional(bevelAngle()),
      opening: z.optional(
        oneOf('The hand of the travel on which the opening lies, the back being up', ['left', 'right']),
      ),
      ...endFields(
        unit,
        'How far ahead of the head’s own place the blade reaches the face',
        'How far ahead of the head’s own place the cut in the face ends',
      ),
    },
    'a map: kind, bed, kerf, offset, bevel …',
  );
  return described(machine, 'A cutting machine');
}

type Given = z.output<ReturnType<typeof machineSchema>>;

/** Keys that one kind of machine has alone. */
const KEYS: Readonly<Record<MachineKind, readonly (keyof Given)[]>> = {
  laser: ['kerf', 'tabs'],
  knife: ['offset', 'overcut', 'lead', 'passes', 'registration'],
  bevel: ['bevel', 'opening', 'start', 'stop', 'spread', 'overrun'],
};

/** What each of those says, for a message. */
const OWN: Readonly<Record<MachineKind, string>> = {
  laser: 'a laser',
  knife: 'a drag knife',
  bevel: 'a bevel head',
};

/** A machine with every default filled in. Its kind is its name's, where it says none. */
export function machineFrom(id: string, given: Given, problems: Problem[]): Machine {
  const path = ['machines', id];
  const kind = given.kind ?? MACHINE_KINDS.find((each) => each === id);
  if (kind === undefined) {
    const message = `the machine ${id} does not say what it cuts with`;
    problems.push(error('machine-kind-missing', path, message, `give kind: ${MACHINE_KINDS.join(' or ')}`));
  }
  for (const other of MACHINE_KINDS) {
    if (kind === undefined || other === kind) continue;
    for (const key of KEYS[other]) {
      if (given[key] === undefined) continue;
      const message = `${key} is for ${OWN[other]}, but ${id} is ${OWN[kind]}`;
      problems.push(error('machine-key-kind', [...path, key], message, `it has ${KEYS[kind].join(', ')}`));
    }
  }
  const machine = filledIn(id, kind ?? 'laser', given);
  problems.push(...layerProblems(machine));
  return machine;
}

/** A machine of which nothing is known but its kind. */
export const plainMachine = (kind: MachineKind): Machine => filledIn(kind, kind, {});

function filledIn(id: string, kind: MachineKind, given: Given): Machine {
  const any = {
    id,
    gap: given.gap ?? USUAL.gap,
    up: given.up ?? USUAL.up,
    outside: given.outside ?? kind !== 'bevel',
    marks: given.marks ?? USUAL.marks,
    notes: given.notes ?? USUAL.notes,
    format: given.format ?? USUAL.format[kind],
    dialect: given.dialect ?? USUAL.dialect,
    tolerance: given.tolerance ?? USUAL.tolerance,
    line: given.line ?? USUAL.line,
    scale: { x: given.scale?.x ?? 1, y: given.scale?.y ?? 1 },
    origin: given.origin ?? USUAL.origin,
    lift: given.lift ?? USUAL.lift,
    sendSpeeds: given.sendSpeeds ?? USUAL.sendSpeeds,
    comments: given.comments ?? USUAL.comments,
    operations: operationsFrom(given.operations),
    ...defined({ bed: given.bed, thickest: given.thickest, travel: given.travel }),
  };
  switch (kind) {
    case 'laser':
      return { ...any, kind, kerf: given.kerf ?? { x: 0, y: 0 }, ...defined({ tabs: given.tabs }) };
    case 'knife':
      return {
        ...any,
        kind,
        offset: given.offset ?? 0,
        overcut: given.overcut ?? USUAL.overcut,
        lead: given.lead ?? USUAL.lead,
        passes: given.passes ?? 1,
        ...defined({ registration: given.registration }),
      };
    case 'bevel':
      return {
        ...any,
        kind,
        opening: given.opening ?? HEAD.opening,
        ...endsFrom(given),
        ...defined({ bevel: given.bevel }),
      };
    default: {
      const never: never = kind;
      return never;
    }
  }
}

/** What is never cut must not share a layer, a colour or a pen with what is. */
function layerProblems({ id, operations }: Machine): readonly Problem[] {
  const { note } = operations;
  const cut = OPERATIONS.filter((name): name is Operation => name !== 'note');
  return cut.flatMap((name) => {
    const its = operations[name];
    const shared = (['layer', 'colour', 'pen'] as const).filter(
      (key) => its[key] === note[key] && !(key === 'pen' && note.pen === 0),
    );
    return shared.map((key) =>
      error(
        'machine-note-cut',
        ['machines', id, 'operations'],
        `notes have the same ${key} as the operation ${name}, so that they would be cut`,
        `give notes a ${key} of their own, or leave them out with notes: false`,
      ),
    );
  });
}
