import type { Size } from '../geometry/point.ts';
import type { OffsetAt } from './head.ts';

export const MACHINE_KINDS = ['laser', 'knife', 'bevel'] as const;
export type MachineKind = (typeof MACHINE_KINDS)[number];

/**
 * What a machine is told to do with a path. `mark` scores a line that stays on the board; `registration` targets are
 * printed, for a cutter that looks for them; `score` is a light pass before the cut; `note` is never cut.
 */
export const OPERATIONS = ['mark', 'registration', 'score', 'inner', 'outer', 'bevel', 'note'] as const;
export type Operation = (typeof OPERATIONS)[number];

export interface OperationSetting {
  /** Of the file: `[A-Za-z0-9_$-]`, 31 characters at most. */
  readonly layer: string;
  /** `#rrggbb`. */
  readonly colour: string;
  /** Of a plotter; 0 leaves the operation out of a plotter's file. */
  readonly pen: number;
  /** mm/s. */
  readonly speed?: number;
}

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
