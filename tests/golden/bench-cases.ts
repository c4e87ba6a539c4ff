import type { OutputId } from '../../src/index.ts';
import { SAMPLES, type Sample } from '../documents/ticket-samples.ts';
import type { Case } from './case.ts';

/** Small enough for one sheet, and hung by V-hinges. */
const FLOAT: Sample = {
  name: 'a small float',
  job: 'title: Sandpiper\nunits: mm\nmat: {border: 25}\nopenings: [{artwork: 120 x 90, float: 6}]\n',
};

/** A sheet for the bench, by the sample that it is made for, and whether its first page has a picture. */
const WANTED: readonly (readonly [sheet: OutputId, sample: string, seen: boolean])[] = [
  ['ticket', 'scant and full', true],
  ['ticket', 'reverse, thick, apart', false],
  ['ticket', 'a row in cm', false],
  ['blanks', 'reverse, thick, apart', true],
  ['labels', 'reverse, thick, apart', true],
  ['intake', 'reverse, thick, apart', true],
  ['placement', 'reverse, thick, apart', false],
  ['placement', FLOAT.name, true],
];

/** Whole files with fixed jobs of their own: those of the templates' tickets are read back by number instead. */
export const BENCH_CASES: readonly Case[] = WANTED.map(([output, name, seen]) => {
  const { job, shop } = [...SAMPLES, FLOAT].find((sample) => sample.name === name)!;
  return {
    name: `${output}-${name.replaceAll(/[^a-z]+/g, '-')}`,
    file: 'job.yaml',
    job,
    output,
    options: output === 'placement' ? {} : { number: '41' },
    inFull: true,
    pictures: seen ? { [output]: [1] } : {},
    ...(shop === undefined ? {} : { shop }),
  };
});
