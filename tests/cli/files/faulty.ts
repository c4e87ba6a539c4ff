import { DISK, type Disk, type Manner } from '../../../src/cli/files/disk.ts';
import type { Place } from '../../../src/cli/files/place.ts';

/** The process has ended: nothing that it still tries has an effect. */
export class Killed extends Error {}

/** What happens before a step of the disk is done; `done` steps were tried before it. */
export type Fault = (done: number, name: keyof Disk, args: readonly unknown[]) => unknown;

export interface Watched {
  readonly disk: Disk;
  readonly steps: () => number;
}

/** The real disk, with a fault before its steps; nobody pulls the plug, so that nothing is waited for. */
export function faulty(fault: Fault): Watched {
  let done = 0;
  const watch =
    <A extends readonly unknown[], R>(name: keyof Disk, step: (...args: A) => R) =>
    (...args: A): R => {
      done += 1;
      fault(done - 1, name, args);
      return step(...args);
    };
  const disk: Disk = {
    find: watch('find', DISK.find),
    real: watch('real', DISK.real),
    list: watch('list', DISK.list),
    read: watch('read', DISK.read),
    makeFolder: watch('makeFolder', DISK.makeFolder),
    removeFolder: watch('removeFolder', DISK.removeFolder),
    create: watch('create', (path: string, bytes: Uint8Array, manner?: Manner) =>
      DISK.create(path, bytes, { ...manner, sync: false }),
    ),
    link: watch('link', DISK.link),
    rename: watch('rename', DISK.rename),
    remove: watch('remove', DISK.remove),
    settle: watch('settle', (_folder: string) => undefined),
  };
  return { disk, steps: () => done };
}

/** The process ends before a step. */
export function killedAt(step: number): Watched {
  let dead = false;
  return faulty((done) => {
    dead ||= done === step;
    if (dead) throw new Killed('killed');
  });
}

/** As the system says it. */
export function fails(code: string): never {
  throw Object.assign(new Error(`${code}: it failed`), { code });
}

/** Processes by number: those above the last that was killed still run. */
export function placeOf(pid: number, disk: Disk, killed = 0): Place {
  return {
    disk,
    own: { pid, start: 1, host: 'bench' },
    alive: (id) => id.pid > killed,
    now: () => 0,
    wait: () => Promise.resolve(),
  };
}
