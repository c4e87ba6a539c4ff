import { distance, type Point } from '../geometry/point.ts';

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
    const at = a === undefined ? from : end(stretches[a.index]!, a.backwards);
    return distance(at, begin(stretches[b.index]!, b.backwards));
  };
  /** Within the steps from `i` to `k` when they are turned about; alike both ways where each of them is. */
  const within = (list: readonly Step[]): number => list.slice(1).reduce((sum, step, n) => sum + gap(list[n], step), 0);
  const alike = (step: Step): boolean => {
    const stretch = stretches[step.index]!;
    return stretch.reversible || distance(stretch.start, stretch.end) === 0;
  };
  for (let round = 0, better = true; better && round < MOST_ROUNDS; round++) {
    better = false;
    for (let i = 0; i < steps.length; i++) {
      let symmetric = true;
      for (let k = i; k < steps.length; k++) {
        symmetric &&= alike(steps[k]!);
        const [before, after] = [steps[i - 1], steps[k + 1]];
        const now = gap(before, steps[i]) + gap(steps[k], after);
        let gain = now - gap(before, turned(steps[k]!)) - gap(turned(steps[i]!), after);
        const slice = symmetric ? [] : steps.slice(i, k + 1);
        if (!symmetric) gain += within(slice) - within(slice.map(turned).reverse());
        if (gain <= GAIN) continue;
        steps.splice(
          i,
          k + 1 - i,
          ...steps
            .slice(i, k + 1)
            .map(turned)
            .reverse(),
        );
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
