import { SAMPLES, type Sample } from '../documents/ticket-samples.ts';

/** Small enough for one sheet, and hung by V-hinges. */
const FLOAT: Sample = {
  name: 'a small float',
  job: 'title: Sandpiper\nunits: mm\nmat: {border: 25}\nopenings: [{artwork: 120 x 90, float: 6}]\n',
};

/** A sheet for the bench, by the sample that it is made for. */
const WANTED: readonly (readonly [sheet: string, sample: string])[] = [
  ['ticket', 'scant and full'],
  ['ticket', 'reverse, thick, apart'],
  ['ticket', 'a row in cm'],
  ['blanks', 'reverse, thick, apart'],
  ['labels', 'reverse, thick, apart'],
  ['intake', 'reverse, thick, apart'],
  ['placement', 'reverse, thick, apart'],
  ['placement', FLOAT.name],
];

/** Whole files with fixed jobs of their own: those of the templates' tickets are read back by number instead. */
export const BENCH_CASES = WANTED.map(([sheet, name]) => {
  const { job, shop } = [...SAMPLES, FLOAT].find((sample) => sample.name === name)!;
  return {
    name: `${sheet}-${name.replaceAll(/[^a-z]+/g, '-')}`,
    file: 'job.yaml',
    job,
    sheet,
    ...(shop === undefined ? {} : { shop }),
  };
});
