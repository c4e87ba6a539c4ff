import { type BuildOptions, type Built, build, type Problem } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import type { Case } from '../golden/case.ts';
import { CASES } from '../golden/cases.ts';
import { picturesIn } from '../golden/pictures-in.ts';

/** Every template and example, and what neither of them has. */
export const PIECES = CASES.filter(({ output, machine }) => output === undefined && machine === undefined);

export type MadeProof = Built & { readonly pdf: Uint8Array; readonly warnings: readonly Problem[] };

export async function proofOf(
  { job, file, shop, folder }: Omit<Case, 'name'>,
  options: BuildOptions = {},
): Promise<MadeProof> {
  const built = await build(job, {
    file,
    documents: ['proof'],
    pictures: picturesIn(folder),
    ...(shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } }),
    ...options,
  });
  if (!built.ok) throw new Error(built.problems.map(showProblem).join('\n'));
  return {
    ...built.value,
    warnings: built.warnings,
    pdf: built.value.files.find(({ name }) => name === 'proof.pdf')!.bytes,
  };
}

const SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const [RAISED, LOWERED] = ['⁰¹²³⁴⁵⁶⁷⁸⁹', '₀₁₂₃₄₅₆₇₈₉'];

/** The numbers of a text as they are read, fractions among them, in the text's own unit. */
export function numbersIn(text: string): readonly number[] {
  const plain = [...text]
    .map((c) =>
      RAISED.includes(c) ? RAISED.indexOf(c) : LOWERED.includes(c) ? LOWERED.indexOf(c) : c === '⁄' ? '/' : c,
    )
    .join('')
    .replaceAll(
      /(\d?)([½⅓⅔¼¾⅛⅜⅝⅞])/gu,
      (_, whole: string, sign: string) => `${whole}${whole === '' ? '' : '\u2009'}${SIGNS[sign]}`,
    );
  return [...plain.matchAll(/(?:(\d+)\u2009)?(\d+)\/(\d+)|\d+(?:\.\d+)?/gu)].map(([all, whole, above, below]) =>
    above === undefined ? Number(all) : Number(whole ?? 0) + Number(above) / Number(below),
  );
}
