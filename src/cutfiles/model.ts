import type { Drawing } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import type { Path } from '../geometry/path.ts';
import type { Point, Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';
import type { Problem, Result } from '../problems/problem.ts';
import type { Board } from '../shop/board.ts';
import type { Machine } from '../shop/machine.ts';
import type { Operation } from '../shop/operation.ts';

/** One way of the tool while it is down, in mm, y down, as the machine sees the side of the board that lies up. */
export interface Toolpath {
  readonly operation: Operation;
  readonly path: Path;
  /** A name that people and tests find it by: `opening-1-2` is opening 2 of layer 1. */
  readonly id: string;
  /** True where it may be run through from its other end as well. */
  readonly reversible: boolean;
  /** Of the blade, in its travel. */
  readonly tilt?: Tilt;
}

export interface Tilt {
  /** Degrees between blade and board; 90 is upright. */
  readonly angle: number;
  /** The hand of the travel on which the blade comes out below; undefined for an upright one. */
  readonly lean?: 'left' | 'right';
}

/** A job as one kind of machine can cut it. */
export interface CutJob {
  readonly job: Job;
  readonly mat: Mat;
  /** With outlines, for letters that no strokes were drawn for. */
  readonly fonts: Fonts;
}

/** A blank of the mat where it lies under the machine; outlines run clockwise as the eye sees them. */
export interface LaidBoard {
  /** From 1, the top mat being 1. */
  readonly layer: number;
  readonly name: string;
  readonly board: Board;
  /** As it lies. */
  readonly size: Size;
  /** Its top left corner. */
  readonly at: Point;
  /** True where it lies a quarter turn clockwise from how it hangs. */
  readonly turned: boolean;
  readonly outline: Path;
  readonly openings: readonly LaidOpening[];
  /** From the blank as it hangs, seen from the side that lies up, to the drawing. */
  readonly place: (p: Point) => Point;
}

export interface LaidOpening {
  /** `opening-2` is opening 2; `lettering-1-3` the third window of the first text. */
  readonly id: string;
  /** Where the job asks for it. */
  readonly path: Problem['path'];
  readonly name: string;
  readonly face: Path;
  readonly back: Path;
  /** True where it is cut upright, whatever the bevel of its layer. */
  readonly upright?: true;
}

/** What one kind of machine does, all in one file. */
export interface MachineKindWork<M extends Machine> {
  /** The job as the machine can cut it, or why it cannot. */
  readonly prepare: (job: Job, machine: M) => Result<Job>;
  /** How far its paths go beyond the outside of a blank. */
  readonly reach: (machine: M) => number;
  /** What one cut takes away between neighbours, by axis. */
  readonly width: (machine: M) => Size;
  /** Least distance between neighbours, whatever the machine's gap says. */
  readonly leastGap: (machine: M) => number;
  /** From a blank to the targets around it, for a machine that looks for some. */
  readonly targetsBeyond?: (machine: M) => number;
  readonly toolpaths: (board: LaidBoard, cut: CutJob, machine: M) => Result<readonly Toolpath[]>;
  /** What was allowed for, in words. */
  readonly allowances: (machine: M, cut: CutJob) => readonly string[];
}

/** One file for a machine, before it is bytes. */
export interface CutFile {
  /** Without an extension: `cut-laser-1`. */
  readonly name: string;
  readonly machine: Machine;
  readonly toolpaths: readonly Toolpath[];
  readonly drawing: Drawing;
  /** The same with all notes and where each blank lies: for a plotter, whose file has none of it. */
  readonly bed?: Drawing;
  /** For the comment of the file. */
  readonly words: readonly string[];
  readonly record: CutRecord;
}

/** A file in plain data, for lists; lengths are mm, times seconds. */
export interface CutRecord {
  readonly file: string;
  readonly machine: string;
  readonly kind: Machine['kind'];
  readonly up: 'back' | 'face';
  readonly width: number;
  readonly height: number;
  readonly boards: readonly {
    readonly layer: number;
    readonly name: string;
    readonly board: string;
    readonly thickness: number;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly turned: boolean;
  }[];
  readonly operations: readonly OperationRecord[];
  /** Between cuts, from the origin on. */
  readonly travel: number;
  /** Null where the machine's speeds are not known. */
  readonly seconds: number | null;
  readonly allowances: readonly string[];
  readonly sight: readonly SightChange[];
  readonly cautions: readonly string[];
  readonly summary: string;
}

export interface OperationRecord {
  readonly operation: Operation;
  readonly layer: string;
  readonly colour: string;
  readonly paths: number;
  readonly closed: number;
  readonly length: number;
  readonly seconds: number | null;
  /** Of a bevel head's strokes. */
  readonly tilts?: readonly Tilt[];
}

/** What is seen through an opening as the job has it, and as this machine cuts it. */
export interface SightChange {
  readonly opening: string;
  readonly job: Size;
  readonly cut: Size;
}
