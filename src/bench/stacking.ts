import { contains, grown } from '../geometry/box.ts';
import type { Job } from '../job/job.ts';
import { fallsShort } from '../job/rule-of-thumb.ts';
import { theNamed } from '../mat/layers.ts';
import type { Mat } from '../mat/model.ts';
import { error, type Problem, warning } from '../problems/problem.ts';
import { showLength } from '../units/print.ts';

/** A blank may come out 1/32 in larger than asked: an under mat trimmed by less could still reach the guide. Common practice, no source. */
const LEAST_TRIM = 0.8;

/**
 * What makes "together" impossible or doubtful once the sizes are right; nothing for boards that are cut apart. Every
 * problem says what to change. (That an under mat is short of the edges and has room for tape is a matter of its sizes.)
 */
export function checkStacking(mat: Mat, job: Job): readonly Problem[] {
  if (job.bench.stack !== 'together') return [];
  return mat.layers.flatMap((layer, index) => {
    if (index === 0) return [];
    const above = mat.layers[index - 1]!;
    const path = ['mat', 'layers', index];
    const problems: Problem[] = [];
    mat.openings.forEach((opening, o) => {
      // The two boards touch where the back of the one above lies on the face of this one, so the fallout carries
      // whatever lies inside the back opening above. An opening on its very line would cut along the gap.
      const here = opening.layers[index]!.faceBox;
      const carried = mat.openings.some((other) => contains(other.layers[index - 1]!.backBox, grown(here, 1e-6), 0));
      if (!carried) {
        const message = `${opening.name} of ${theNamed(layer.name)} does not lie inside one fallout of ${theNamed(above.name)}, so nothing carries it while it is cut`;
        const hint = 'make the reveal more than the setback of the board above, or stack: apart';
        problems.push(error('together-outside-fallout', ['openings', o], message, hint));
      }
    });
    if (above.bevel.reverse && above.setback > 0) {
      const message = `${theNamed(above.name)} has a reverse bevel: its fallout is wider at the back and cannot drop out through the opening with that of ${theNamed(layer.name)}`;
      const hint =
        'stack: apart, or cut the under mat on a slip sheet of waste board of the same thickness instead of the fallout';
      problems.push(warning('together-reverse-fallout', [...path, 'board'], message, hint));
    }
    if (layer.trimBack > 0 && fallsShort(layer.trimBack, LEAST_TRIM)) {
      const message = `${theNamed(layer.name)} is trimmed back by only ${showLength(layer.trimBack, job.units)}, a blank that came out a little large would reach the guide`;
      problems.push(warning('together-barely-short', [...path, 'trimBack'], message, 'trim it back by 1/8 in or 3 mm'));
    }
    return problems;
  });
}
