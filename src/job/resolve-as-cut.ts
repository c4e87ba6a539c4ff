import { error, type Problem } from '../problems/problem.ts';
import { defined } from '../read/fields/defined.ts';
import type { AsCutRequest, OpeningAsCut } from './as-cut.ts';
import type { JobInput } from './job-schema.ts';

type Given = NonNullable<JobInput['asCut']>;

/** What was cut, with every layer and opening that it names there in the job. */
export function asCutFrom(given: Given, layers: number, openings: number, problems: Problem[]): AsCutRequest {
  const blanks = (given.layers ?? []).map(({ blank }) => blank);
  const outer = given.outer ?? blanks[0];
  if (given.outer !== undefined && blanks[0] !== undefined) {
    const message = 'the blank of the top mat is given twice, as outer and as the blank of the first layer';
    problems.push(error('as-cut-twice', ['asCut', 'layers', 0, 'blank'], message, 'keep one of the two'));
  }
  if (blanks.length > layers) {
    const message = `${blanks.length} layers were cut, the mat has ${layers}`;
    problems.push(error('as-cut-layer', ['asCut', 'layers'], message, 'name the layers that the mat has'));
  }
  return {
    blanks: blanks.map((blank, index) => (index === 0 ? undefined : blank)),
    openings: openingsFrom(given.openings ?? [], layers, openings, problems),
    ...defined({ outer }),
  };
}

function openingsFrom(
  given: NonNullable<Given['openings']>,
  layers: number,
  openings: number,
  problems: Problem[],
): readonly OpeningAsCut[] {
  const seen = new Set<string>();
  return given.map(({ opening = 1, layer = 1, size, border }, index) => {
    const path = ['asCut', 'openings', index];
    if (layer > layers) {
      const message = `layer ${layer} was cut, the mat has ${layers}`;
      problems.push(error('as-cut-layer', [...path, 'layer'], message, 'layer 1 is the top mat'));
    }
    if (opening > openings) {
      const message = `opening ${opening} was cut, the job has ${openings}`;
      problems.push(error('as-cut-opening', [...path, 'opening'], message, 'count them as the job lists them, from 1'));
    }
    const place = `${opening} ${layer}`;
    if (seen.has(place)) {
      const message = `opening ${opening} of layer ${layer} was cut twice`;
      problems.push(error('as-cut-twice', path, message, 'keep one of the two'));
    }
    seen.add(place);
    return { opening: opening - 1, layer: layer - 1, size, border: { ...border } };
  });
}
