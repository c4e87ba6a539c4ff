import { describe, expect, test } from 'vitest';
import { strokes } from '../../src/bench/strokes.ts';
import type { Job } from '../../src/job/job.ts';
import { readJob } from '../../src/job/read.ts';
import { solve } from '../../src/mat/solve.ts';

function solved(text: string) {
  const read = readJob({ text, file: 'job.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const job: Job = read.value.job;
  const mat = solve(job);
  if (!mat.ok) throw new Error(JSON.stringify(mat.problems));
  return { job, mat: mat.value, work: strokes(mat.value, job) };
}

const JOB = `
units: mm
mat:
  outer: 400 x 500
  border: {left: 70, top: 80}
  layers:
    - {board: {thickness: 1.5}, bevel: {angle: 60, reverse: REVERSE}}
    - {board: {thickness: 1.2}, reveal: 6, trimBack: 3}
openings:
  - {shape: rectangle, size: 228 x 288}
bench: {graduation: 1}
`;

describe('strokes of a solved job', () => {
  test.each(['false', 'true'])('lie on the back outline that the solver works out (reverse: %s)', (reverse) => {
    const { mat, work } = solved(JOB.replace('REVERSE', reverse));
    expect(work.strokes).toHaveLength(8);
    for (const s of work.strokes) {
      const back = mat.openings[0]!.layers[s.layer - 1]!.backBox;
      for (const p of [s.line.from, s.line.to]) {
        const x = 400 - p.x;
        expect(Math.min(Math.abs(x - back.x), Math.abs(x - back.x - back.width))).toBeLessThan(1e-9);
        expect(Math.min(Math.abs(p.y - back.y), Math.abs(p.y - back.y - back.height))).toBeLessThan(1e-9);
      }
      // Face left of the top mat at 70 of 400, of the under mat at 76.
      if (s.side === 'left' && s.guideFrom === 'border') expect(s.distance).toBeCloseTo(s.layer === 1 ? 70 : 76, 9);
    }
  });
});
