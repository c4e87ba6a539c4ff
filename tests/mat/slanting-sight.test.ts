import { describe, expect, it } from 'vitest';
import { inch, inches, jobOf, opening, solvedMat } from './job.ts';

describe('an artwork floated in a shape with slanting sides', () => {
  it.each(['side', 'corner'] as const)('lies in its middle, standing on its %s', (stands) => {
    const only = opening({
      shape: 'polygon',
      fields: { sides: 6, stands },
      artwork: inches(8, 8),
      float: { left: inch(1) },
      measure: 'sight',
    });
    const { openings } = solvedMat(jobOf({ openings: [only], mat: { border: { left: inch(3), top: inch(3) } } }));
    const { overlap } = openings[0]!.artwork!;
    expect(overlap.left).toBeCloseTo(overlap.right, 9);
    expect(overlap.top).toBeCloseTo(overlap.bottom, 9);
  });
});
