import type { Sample } from '../bench/fit.ts';

/** What a person reads off a millimetre rule or a printed vernier is good to this, mm. Common practice, no source. */
export const READING = 0.1;

export function mean(values: readonly number[]): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}

/** Sample standard deviation, n − 1 degrees of freedom; undefined for a single value. */
export function standardDeviation(values: readonly number[]): number | undefined {
  if (values.length < 2) return undefined;
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / (values.length - 1));
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * Which values stand out: farther from the median than 3 × 1.4826 × MAD, the median of the absolute deviations, which
 * for a normal scatter is three standard deviations. That scale is never taken below the reading's own 0.1 mm.
 */
export function standingOut(values: readonly number[], finest = READING): readonly boolean[] {
  const middle = median(values);
  const deviations = values.map((v) => Math.abs(v - middle));
  const scale = Math.max(1.4826 * median(deviations), finest);
  return deviations.map((d) => d > 3 * scale + 1e-9);
}

/** Three samples lie near some line by chance often enough: fewer than four show no line that others stand out of. */
const LEAST_ON_LINE = 4;

/**
 * As `standingOut`, about a line that a few wild samples do not pull: the median of the slopes between all pairs (Theil
 * and Sen). Where fewer than four samples would be left, or no more than half, what stands out is not a few wrong
 * readings but the scatter itself: then none does.
 */
export function standingOutOfLine(samples: readonly Sample[], finest = READING): readonly boolean[] {
  const slopes = samples.flatMap((a, i) =>
    samples.slice(i + 1).flatMap((b) => (a.x === b.x ? [] : [(b.y - a.y) / (b.x - a.x)])),
  );
  const slope = slopes.length === 0 ? 0 : median(slopes);
  const out = standingOut(
    samples.map((p) => p.y - slope * p.x),
    finest,
  );
  const left = out.filter((wild) => !wild).length;
  return left >= LEAST_ON_LINE && left > samples.length / 2 ? out : out.map(() => false);
}
