import { remark } from '../say.ts';

/** As shells count the end of a program by that signal. */
export const INTERRUPTED = 130;

/** Whether somebody has asked for an end. */
export interface Interrupt {
  readonly stopped: () => boolean;
  /** Signals mean again what they always do. */
  readonly release: () => void;
}

/**
 * Once asked to end, nothing new is begun, and what is being written is written: so every file is whole. Who asks again is
 * not kept waiting.
 */
export function interrupt(stop: () => void): Interrupt {
  let stopped = false;
  const hear = (): void => {
    if (stopped) process.exit(INTERRUPTED);
    stopped = true;
    remark('stopping; once more to stop at once');
    stop();
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, hear);
  return {
    stopped: () => stopped,
    release: () => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, hear);
    },
  };
}
