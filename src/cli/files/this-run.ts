import { resolve } from 'node:path';
import { UsageError } from '../usage.ts';
import type { Disk } from './disk.ts';
import { Inputs, type Role } from './inputs.ts';
import type { Recovered } from './recover.ts';
import { NOTHING } from './why.ts';

/** What a run has read, and what it has found of runs that were stopped. */
export interface Known {
  readonly inputs: Inputs;
  /** Changed by a run that was stopped before it could say so. */
  readonly doubtful: readonly string[];
}

const inputs = new Inputs();
const doubtful = new Set<string>();

/** Every file that is read for a run is remembered here, so that no command can forget to name one. */
export const remember = (file: string, role: Role): void => inputs.add(file, role);

/** Was it read already? */
export const isKnown = (file: string): boolean => inputs.has(file);

export function rememberFound(found: readonly Recovered[]): void {
  for (const { kept } of found) for (const file of kept) doubtful.add(file);
}

export const known = (): Known => ({ inputs, doubtful: [...doubtful] });

/** A run begins. */
export function forget(): void {
  inputs.clear();
  doubtful.clear();
}

const CHANGED: readonly Role[] = ["shop's file", "day's list", 'journal of plans'];

/**
 * No output goes where an input is, by whatever way: the same path, a link, or a second name of the same file. The
 * shop's file and its journal may be changed as such, where they are read as nothing else.
 */
export function refuseInputs(target: string, file: string, kept: boolean, known: Known, disk: Disk): void {
  const there = disk.find(target);
  if (there === undefined) return;
  for (const { path, role } of known.inputs.at(target, there, disk)) {
    if (kept && CHANGED.includes(role)) continue;
    const named = path === resolve(file) ? '' : ` ${path}`;
    throw new UsageError(
      `${file} would be written over the ${role}${named}; write to another folder, or give one of them another name; ${NOTHING}`,
    );
  }
}
