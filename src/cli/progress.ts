const EVERY_MS = 100;

/** How far some work is, on one line that writes over itself; where nobody looks on, nothing. */
export interface Progress {
  readonly step: (done: number, of: number, what: string) => void;
  readonly end: () => void;
}

interface Screen {
  readonly isTTY?: boolean;
  readonly columns?: number;
  readonly write: (text: string) => unknown;
}

/** From the first step on: what is left is told by how long what is done took. */
export function progress(quiet: boolean, screen: Screen = process.stderr, now: () => number = Date.now): Progress {
  if (quiet || screen.isTTY !== true) return { step: () => undefined, end: () => undefined };
  const begun = now();
  let [shown, length] = [Number.NEGATIVE_INFINITY, 0];
  const show = (text: string): void => {
    const line = text.slice(0, (screen.columns ?? 80) - 1);
    screen.write(`\r${line.padEnd(length)}`);
    length = line.length;
  };
  return {
    step(done, of, what) {
      const at = now();
      if (at - shown < EVERY_MS && done < of) return;
      shown = at;
      const left = done === 0 ? '' : `, ${timeWords(((at - begun) / done) * (of - done))} left`;
      show(`${done} of ${of} ${what}${done === of ? '' : left}`);
    },
    end() {
      if (length === 0) return;
      show('');
      screen.write('\r');
    },
  };
}

/** As fine as it can be believed. */
export function timeWords(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  if (seconds < 10) return `${seconds} s`;
  if (seconds < 90) return `about ${5 * Math.ceil(seconds / 5)} s`;
  return `about ${Math.ceil(seconds / 60)} min`;
}
