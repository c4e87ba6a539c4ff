export interface Sample {
  readonly x: number;
  readonly y: number;
}

/** y = intercept + slope·x by least squares, with what a reader needs to judge it. */
export interface Line {
  readonly intercept: number;
  readonly slope: number;
  /** y − line, in the order given. */
  readonly residuals: readonly number[];
  /** Standard deviation of the residuals, n − 2 degrees of freedom; undefined with fewer than three samples. */
  readonly residualDeviation?: number;
  readonly interceptError?: number;
  readonly slopeError?: number;
  /** R²: the share of the variation in y that the line explains. */
  readonly determination: number;
}

/** Through two samples the line is exact. All x alike: their mean, without slope. `samples` must not be empty. */
export function fitLine(samples: readonly Sample[]): Line {
  const n = samples.length;
  const meanX = samples.reduce((sum, p) => sum + p.x, 0) / n;
  const meanY = samples.reduce((sum, p) => sum + p.y, 0) / n;
  let across = 0;
  let squareX = 0;
  let squareY = 0;
  for (const p of samples) {
    across += (p.x - meanX) * (p.y - meanY);
    squareX += (p.x - meanX) ** 2;
    squareY += (p.y - meanY) ** 2;
  }
  const slope = squareX === 0 ? 0 : across / squareX;
  const intercept = meanY - slope * meanX;
  // About the means, so that large x lose no digits.
  const residuals = samples.map((p) => p.y - meanY - slope * (p.x - meanX));
  const left = residuals.reduce((sum, r) => sum + r * r, 0);
  const line = { intercept, slope, residuals, determination: squareY === 0 ? 1 : 1 - left / squareY };
  if (n < 3 || squareX === 0) return line;
  const residualDeviation = Math.sqrt(left / (n - 2));
  return {
    ...line,
    residualDeviation,
    interceptError: residualDeviation * Math.sqrt(1 / n + meanX ** 2 / squareX),
    slopeError: residualDeviation / Math.sqrt(squareX),
  };
}
