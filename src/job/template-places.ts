import { defined } from '../problems/defined.ts';
import type { AnswerName, Answers } from './answers.ts';

/** What a template has a place for. */
export interface Places {
  readonly layers: number;
  readonly openings: readonly { readonly name: string; readonly has: 'artwork' | 'size' }[];
  /** Why it cannot have another number of openings; undefined where it can. */
  readonly fixed?: string;
  readonly floats: boolean;
}

/** Answers that do not go together, or that there is no place for. */
export interface Misfit {
  readonly names: readonly AnswerName[];
  readonly why: string;
  readonly remedy: string;
}

type Tree = Readonly<Record<string, unknown>>;
const mapOf = (value: unknown): Tree => (typeof value === 'object' && value !== null ? (value as Tree) : {});
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** Of a job as a plain tree. */
export function placesOf(tree: unknown): Places {
  const { mat, openings, arrange, lettering } = mapOf(tree);
  const own = listOf(openings).map(mapOf);
  const { rows, columns } = mapOf(arrange);
  const fixed =
    Array.isArray(rows) || columns !== undefined
      ? 'its openings lie in rows of a given number'
      : own.some(({ place }) => place !== undefined) || lettering !== undefined
        ? 'what lies in it has places that hang on its openings'
        : undefined;
  return {
    layers: Math.max(1, listOf(mapOf(mat).layers).length),
    openings: own.map((each, i) => ({
      name: typeof each.name === 'string' ? each.name : `opening ${i + 1}`,
      has: each.artwork === undefined ? 'size' : 'artwork',
    })),
    floats: own.some(({ float }) => float !== undefined),
    ...defined({ fixed }),
  };
}

export const artworksOf = ({ openings }: Places, count: number | undefined): readonly string[] => {
  const last = openings.at(-1);
  const all = Array.from({ length: count ?? openings.length }, (_, i) => openings[i] ?? { has: last?.has, name: '' });
  return all.flatMap(({ name, has }, i) => (has === 'artwork' ? [name === '' ? `opening ${i + 1}` : name] : []));
};

export function misfits(answers: Answers, places: Places): readonly Misfit[] {
  return [...together(answers), ...placeless(answers, places)];
}

const PAIRS: readonly (readonly [AnswerName, AnswerName, string])[] = [
  ['outer', 'frame', 'the mat is as large as the frame takes, or as its outer size says'],
  ['overlap', 'float', 'the mat covers the edge of the artwork, or the artwork lies free'],
];

const together = (answers: Answers): readonly Misfit[] =>
  PAIRS.filter(([one, other]) => answers[one] !== undefined && answers[other] !== undefined).map(
    ([one, other, why]) => ({ names: [one, other], why, remedy: 'give one of the two' }),
  );

function placeless(answers: Answers, places: Places): readonly Misfit[] {
  const found: Misfit[] = [];
  const refuse = (name: AnswerName, why: string, remedy: string) => found.push({ names: [name], why, remedy });
  const { layers, fixed } = places;
  const artworks = artworksOf(places, answers.openings);
  if (answers.reveal !== undefined && layers === 1)
    refuse('reveal', 'there is one mat, which has nothing above it', 'leave it out, or take a template of two layers');
  if (answers.openings !== undefined && fixed !== undefined && answers.openings !== places.openings.length)
    refuse('openings', `it has ${places.openings.length} openings, and ${fixed}`, 'change them in the file');
  if ((answers.boards ?? []).length > layers)
    refuse('boards', `there are ${answers.boards?.length} boards for ${layersWords(layers)}`, 'give one for each');
  const given = answers.artworks?.length ?? artworks.length;
  if (artworks.length === 0) {
    for (const name of ['artworks', 'overlap', 'float'] as const)
      if (answers[name] !== undefined)
        refuse(name, 'its opening has a size and no artwork', 'leave it out, and change the size in the file');
  } else if (given !== artworks.length) {
    const list = artworks.length > 1 ? ` (${artworks.join(', ')})` : '';
    refuse('artworks', `${times(given)} for ${artworks.length} artworks${list}`, `give it ${times(artworks.length)}`);
  }
  return found;
}

const layersWords = (count: number): string => (count === 1 ? 'one layer' : `${count} layers`);
const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);
