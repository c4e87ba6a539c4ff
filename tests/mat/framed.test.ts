import { expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { pieceBox, rebateSize, sightBox } from '../../src/mat/framed.ts';
import { solve } from '../../src/mat/solve.ts';

function framed(frame: string) {
  const text = `units: mm\nmat: {${frame}, layers: [{board: {thickness: 1.4}}]}\nopenings: [{size: 200 x 300}]\n`;
  const read = readJob({ text, file: 'job.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { job } = read.value;
  const solved = solve(job);
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  return { job, mat: solved.value };
}

it('around a mat lies its frame: half of the clearance out, the lip in, then the face of the moulding', () => {
  const { job, mat } = framed('frame: {inside: 400 x 500, clearance: 3, lip: 6, width: 18}');
  expect(mat.outer).toMatchObject({ width: 397, height: 497 });
  expect(rebateSize(mat, job.mat.frame!)).toEqual({ width: 400, height: 500 });
  // 1.5 mm of clearance on each side, of which and of the mat the lip hides 6.
  expect(sightBox(mat, job)).toEqual({ x: 4.5, y: 4.5, width: 388, height: 488 });
  expect(pieceBox(mat, job)).toEqual({ x: -13.5, y: -13.5, width: 424, height: 524 });
});

it('without a frame the piece is the mat, and begins where it does', () => {
  const { job, mat } = framed('outer: 400 x 500');
  const whole = { x: 0, y: 0, width: 400, height: 500 };
  expect([sightBox(mat, job), pieceBox(mat, job)]).toEqual([whole, whole]);
});
