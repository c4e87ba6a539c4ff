import { distance, type Point } from '../../geometry/point.ts';

/** Something that is begun at one point and ends at another. */
export interface Stretch {
  readonly start: Point;
  readonly end: Point;
  /** Whether it may be run through from its end. */
  readonly reversible: boolean;
}

export interface Step {
  readonly index: number;
  readonly backwards: boolean;
}

const MOST_ROUNDS = 40;
/** Less is gained by a change than rounding alone may seem to, mm. */
const GAIN = 1e-6;

/**
 * In which order, and from which end, stretches are run through so that the way between them is short, beginning at
 * `from`: the nearest first, then stretches of the order turned about while that helps (2-opt). Every stretch comes once.
 */
export function shortTravel(stretches: readonly Stretch[], from: Point): readonly Step[] {
  return improved(nearestFirst(stretches, from), stretches, from);
}

const begin = (s: Stretch, backwards: boolean): Point => (backwards ? s.end : s.start);
const end = (s: Stretch, backwards: boolean): Point => (backwards ? s.start : s.end);

function nearestFirst(stretches: readonly Stretch[], from: Point): Step[] {
  const left = new Set(stretches.keys());
  const steps: Step[] = [];
  let at = from;
  while (left.size > 0) {
    let best: Step | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const index of left) {
      const stretch = stretches[index]!;
      for (const backwards of stretch.reversible ? [false, true] : [false]) {
        const away = distance(at, begin(stretch, backwards));
        if (away < least - GAIN) [best, least] = [{ index, backwards }, away];
      }
    }
    left.delete(best!.index);
    steps.push(best!);
    at = end(stretches[best!.index]!, best!.backwards);
  }
  return steps;
}

function improved(given: readonly Step[], stretches: readonly Stretch[], from: Point): readonly Step[] {
  const steps = [...given];
  const turned = ({ index, backwards }: Step): Step => ({
    index,
    backwards: backwards !== stretches[index]!.reversible,
  });
  const gap = (a: Step | undefined, b: Step | undefined): number => {
    if (b === undefined) return 0;
    const p = a === undefined ? from : end(stretches[a.index]!, a.backwards);
    const q = begin(stretches[b.index]!, b.backwards);
    return Math.sqrt((p.x - q.x) ** 2 + (p.y - q.y) ** 2);
  };
  for (let round = 0, better = true; better && round < MOST_ROUNDS; round++) {
    better = false;
    for (let i = 0; i < steps.length; i++) {
      // The way within the steps from `i` to `k`, and when they are turned about.
      let [ahead, about] = [0, 0];
      for (let k = i; k < steps.length; k++) {
        const [before, step, after] = [steps[i - 1], steps[k]!, steps[k + 1]];
        if (k > i) {
          ahead += gap(steps[k - 1], step);
          about += gap(turned(step), turned(steps[k - 1]!));
        }
        const now = gap(before, steps[i]) + ahead + gap(step, after);
        const then = gap(before, turned(step)) + about + gap(turned(steps[i]!), after);
        if (now - then <= GAIN) continue;
        const part = steps
          .slice(i, k + 1)
          .map(turned)
          .reverse();
        steps.splice(i, part.length, ...part);
        [ahead, about] = [about, ahead];
        better = true;
      }
    }
  }
  return steps;
}

/** The way between the stretches, tool up. */
export function travelOf(steps: readonly Step[], stretches: readonly Stretch[], from: Point): number {
  let at = from;
  let sum = 0;
  for (const { index, backwards } of steps) {
    const stretch = stretches[index]!;
    sum += distance(at, begin(stretch, backwards));
    at = end(stretch, backwards);
  }
  return sum;
}
