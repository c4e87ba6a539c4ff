import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { codeOf } from './why.ts';

/**
 * One process, told from every other: by its number, the moment of its start in the system's own ticks (numbers are
 * given out again), and the machine. Where a system does not tell the moment it is 0.
 */
export interface ProcessId {
  readonly pid: number;
  readonly start: number;
  readonly host: string;
}

export const OWN: ProcessId = { pid: process.pid, start: startOf('self') ?? 0, host: short(hostname()) };

/** A file of a process that cannot be asked is taken for one left behind after this time; none is needed for so long. */
const LEFT_BEHIND_MS = 10 * 60 * 1000;

/** Does the process still run that left a file, which is so old? */
export function alive(id: ProcessId, ageMs: number, own: ProcessId = OWN): boolean {
  if (id.host !== own.host) return ageMs < LEFT_BEHIND_MS;
  if (!runs(id.pid)) return false;
  if (id.start === 0) return ageMs < LEFT_BEHIND_MS;
  const start = startOf(String(id.pid));
  // What cannot be seen, but runs, belongs to somebody else who hides it.
  return start === undefined ? ageMs < LEFT_BEHIND_MS : start === id.start;
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (problem) {
    return codeOf(problem) === 'EPERM';
  }
}

/** Where Linux tells it: the 22nd field, behind a name that may hold anything. One that has ended but is still listed starts never. */
function startOf(pid: string): number | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'latin1');
    const [state, ...fields] = text.slice(text.lastIndexOf(')') + 2).split(' ');
    return state === 'Z' || state === 'X' ? -1 : Number(fields[18]);
  } catch {
    return undefined;
  }
}

/** Letters and digits of a machine's name that fit into a file's name. */
function short(name: string): string {
  return (
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]/gu, '')
      .slice(0, 16) || 'here'
  );
}
