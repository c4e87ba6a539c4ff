import { type BuildOptions, type Built, build, type Problem } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';

/** The files of a job as text, or a test that fails with its problems. */
export async function cut(
  job: string,
  shop: string,
  options: BuildOptions,
): Promise<{
  readonly texts: readonly string[];
  readonly names: readonly string[];
  readonly built: Built & { readonly warnings: readonly Problem[] };
}> {
  const built = await build(job, { shop: { text: shop, file: 'shop.yaml' }, documents: ['cutfile'], ...options });
  if (!built.ok) throw new Error(built.problems.map(showProblem).join('\n'));
  const { value, warnings } = built;
  return {
    texts: value.files.map(({ bytes }) => new TextDecoder().decode(bytes)),
    names: value.files.map(({ name }) => name),
    built: { ...value, warnings },
  };
}

/** Lopsided, so that a mirror image shows; one layer, in mm. */
export const LOPSIDED = `
title: Lopsided
units: mm
mat:
  border: {top: 61, right: 47, bottom: 89, left: 33}
  layers: [{board: {name: grey, thickness: 1.5, colour: "#888888"}, bevel: 90}]
openings: [{size: 180 x 240}]
`;
