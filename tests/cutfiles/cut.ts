import { type BuildOptions, build } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';

/** The files of a job as text, or a test that fails with its problems. */
export async function cut(
  job: string,
  shop: string,
  wishes: NonNullable<BuildOptions['cut']>,
): Promise<{ readonly texts: readonly string[]; readonly names: readonly string[]; readonly built: Built }> {
  const built = await build(job, { shop: { text: shop, file: 'shop.yaml' }, documents: ['cutfile'], cut: wishes });
  if ('problems' in built) throw new Error(built.problems.map(showProblem).join('\n'));
  return {
    texts: built.files.map(({ bytes }) => new TextDecoder().decode(bytes)),
    names: built.files.map(({ name }) => name),
    built,
  };
}

type Built = Exclude<Awaited<ReturnType<typeof build>>, { problems: unknown }>;

/** Lopsided, so that a mirror image shows; one layer, in mm. */
export const LOPSIDED = `
title: Lopsided
units: mm
mat:
  border: {top: 61, right: 47, bottom: 89, left: 33}
  layers: [{board: {name: grey, thickness: 1.5, colour: "#888888"}, bevel: 90}]
openings: [{size: 180 x 240}]
`;
