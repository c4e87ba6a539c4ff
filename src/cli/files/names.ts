import type { ProcessId } from './process.ts';

/**
 * The files that a run keeps beside its outputs while it writes. Each carries in its name which process made it and for
 * which of its writings, so that whoever comes later knows without opening it whether it is still wanted.
 */
export type Hidden =
  /** This process writes into the folder, or waits for it. */
  | 'lock'
  /** What is about to be renamed, see `journal.ts`; in the folder of the last file. */
  | 'journal'
  /** The same, while it is taken back. */
  | 'undo'
  /** In the other folders: where the journal is. */
  | 'away'
  /** A new file that has not got its name yet. */
  | 'part'
  /** An old one under a second name until all new ones have theirs. */
  | 'old';

export interface HiddenName {
  readonly id: ProcessId;
  readonly run: string;
  readonly kind: Hidden;
}

const NAME =
  /^\.matwright-((\d{1,10})-(\d{1,20})-([a-z0-9]{1,16})-\d{1,9})(?:\.\d{1,6})?\.(lock|journal|undo|away|part|old)$/u;

let count = 0;

/** A name for one writing of a process. */
export function newRun({ pid, start, host }: ProcessId): string {
  count += 1;
  return `${pid}-${start}-${host}-${count}`;
}

export function hiddenName(run: string, kind: Hidden, index?: number): string {
  return `.matwright-${run}${index === undefined ? '' : `.${index}`}.${kind}`;
}

export function parseHidden(name: string): HiddenName | undefined {
  const [, run, pid, start, host, kind] = NAME.exec(name) ?? [];
  if (run === undefined || host === undefined) return undefined;
  return { id: { pid: Number(pid), start: Number(start), host }, run, kind: kind as Hidden };
}
