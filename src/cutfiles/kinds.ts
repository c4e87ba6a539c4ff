import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { Result } from '../problems/problem.ts';
import type { Machine } from '../shop/machine.ts';
import { bevel } from './bevel.ts';
import { knife } from './knife.ts';
import { laser } from './laser.ts';
import type { CutJob, LaidBoard, MachineKindWork, Toolpath } from './model.ts';

/** The work of a machine's kind, for that machine. */
export interface Work {
  readonly prepare: (job: Job) => Result<Job>;
  readonly reach: number;
  readonly width: Size;
  readonly leastGap: number;
  readonly targetsBeyond: number;
  readonly toolpaths: (board: LaidBoard, cut: CutJob) => Result<readonly Toolpath[]>;
  readonly allowances: (cut: CutJob) => readonly string[];
}

/** Every kind of machine, one file for each. */
export function workOf(machine: Machine): Work {
  switch (machine.kind) {
    case 'laser':
      return bound(laser, machine);
    case 'knife':
      return bound(knife, machine);
    case 'bevel':
      return bound(bevel, machine);
    default: {
      const never: never = machine;
      return never;
    }
  }
}

function bound<M extends Machine>(work: MachineKindWork<M>, machine: M): Work {
  return {
    prepare: (job) => work.prepare(job, machine),
    reach: work.reach(machine),
    width: work.width(machine),
    leastGap: work.leastGap(machine),
    targetsBeyond: work.targetsBeyond?.(machine) ?? 0,
    toolpaths: (board, cut) => work.toolpaths(board, cut, machine),
    allowances: (cut) => work.allowances(machine, cut),
  };
}
