import type { AnswerName, Answers } from '../../job/answers.ts';
import { artworksOf, type Places } from '../../job/template-places.ts';
import type { Shop } from '../../shop/shop.ts';
import { showLength } from '../../units/print.ts';
import { LENGTH_UNITS, type LengthUnit } from '../../units/units.ts';
import type { Asker } from '../asking/asker.ts';
import { isCount, MOST_OPENINGS } from './options.ts';
import { wrongLength, wrongSize } from './wrong-answer.ts';

/** Somebody who can also choose from a list. */
export interface Chooser extends Asker {
  choose(
    question: string,
    options: readonly { readonly value: string; readonly hint: string }[],
    usual?: string,
  ): Promise<string>;
}

export interface Around {
  readonly places: Places;
  /** The template's own. */
  readonly units: LengthUnit;
  readonly shop?: Shop;
  /** The shop's, where its file says so. */
  readonly shopUnits?: LengthUnit;
}

type Mutable = { -readonly [Name in AnswerName]?: Answers[Name] };

/** Lengths that are examples of answers, by unit. */
const EXAMPLES: Readonly<Record<LengthUnit, Readonly<Record<'artwork' | 'outer' | 'border' | 'small', string>>>> = {
  in: { artwork: '8 1/2 x 11', outer: '16 x 20', border: '2 1/2', small: '1/4' },
  mm: { artwork: '210 x 297', outer: '400 x 500', border: '65', small: '6' },
  cm: { artwork: '21 x 29.7', outer: '40 x 50', border: '6.5', small: '0.6' },
};

const KEEP = 'as it is';

/**
 * A few questions; what is answered already, by an option or before, is not asked. Each names the unit that it reads.
 * `again`: these alone, since what was answered did not go together.
 */
export async function askJob(
  given: Answers,
  around: Around,
  ask: Chooser,
  again?: ReadonlySet<AnswerName>,
): Promise<Answers> {
  const answers: Mutable = { ...given };
  const { places, shop } = around;
  const open = (...names: readonly AnswerName[]): boolean =>
    names.every((name) => answers[name] === undefined) &&
    (again === undefined || names.some((name) => again.has(name)));
  if (open('title')) answers.title = await ask.text('What is the piece called?', { example: 'Heron, linocut' });
  if (open('units')) answers.units = around.shopUnits ?? (await askUnits(around.units, ask));
  const unit = LENGTH_UNITS.find((each) => each === answers.units) ?? around.units;
  const examples = EXAMPLES[unit];
  const optional = (question: string, example: string) =>
    ask.text(`${question} (${unit}; empty: as in the template)?`, {
      example,
      optional: true,
      wrong: wrongLength(unit),
    });
  if (open('openings')) answers.openings = await askCount(places, ask);
  const artworks = artworksOf(places, answers.openings);
  if (open('artworks')) answers.artworks = await askArtworks(artworks, unit, ask);
  if (artworks.length > 0 && open('overlap', 'float')) {
    if (places.floats) answers.float = await optional('Paper shown around the artwork', examples.small);
    else answers.overlap = await optional('Mat over the artwork on each side', examples.small);
  }
  if (open('outer', 'frame', 'border')) Object.assign(answers, await askSize(unit, ask));
  if (open('weighting')) answers.weighting = await askWeighting(unit, ask);
  if (places.layers > 1 && open('reveal'))
    answers.reveal = await optional('How much shows of each under mat', examples.small);
  if (shop === undefined) return answers;
  if (open('head')) answers.head = await askHead(shop, ask);
  if (open('boards')) answers.boards = await askBoards(places, shop, ask);
  return answers;
}

async function askSize(unit: LengthUnit, ask: Chooser): Promise<Pick<Answers, 'outer' | 'frame' | 'border'>> {
  const way = await ask.choose('What is known of the size?', [
    { value: 'outer', hint: 'width and height of the mat' },
    { value: 'frame', hint: "width and height inside the frame's rebate" },
    { value: 'border', hint: 'the mat is as large as its border makes it' },
    { value: KEEP, hint: 'the template says it' },
  ]);
  const { outer, border } = EXAMPLES[unit];
  const size = { example: outer, wrong: wrongSize(unit) };
  switch (way) {
    case 'outer':
      return { outer: await ask.text(`Outer size of the mat, width x height (${unit})?`, size) };
    case 'frame':
      return { frame: await ask.text(`Inside the frame, width x height (${unit})?`, size) };
    case 'border':
      return { border: await ask.text(`Border (${unit})?`, { example: border, wrong: wrongLength(unit) }) };
    default:
      return {};
  }
}

const askUnits = (own: LengthUnit, ask: Chooser): Promise<string> =>
  ask.choose(
    'In which unit are the sizes?',
    LENGTH_UNITS.map((value) => ({ value, hint: value === own ? "the template's" : 'its own sizes stay as they are' })),
    own,
  );

async function askCount(places: Places, ask: Asker): Promise<number | undefined> {
  if (places.fixed !== undefined) return undefined;
  const count = String(places.openings.length);
  const wrong = (answer: string) => (isCount(answer) ? undefined : `give a whole number from 1 to ${MOST_OPENINGS}`);
  const answer = await ask.text(`How many openings? (empty: ${count})`, { example: count, optional: true, wrong });
  return answer === undefined ? undefined : Number(answer);
}

async function askArtworks(names: readonly string[], unit: LengthUnit, ask: Asker): Promise<Answers['artworks']> {
  const how = { example: EXAMPLES[unit].artwork, optional: true, wrong: wrongSize(unit) };
  const found: (string | undefined)[] = [];
  for (const name of names) {
    const whose = names.length === 1 ? 'Artwork' : `Artwork of ${name}`;
    found.push(await ask.text(`${whose}, width x height (${unit}; empty: as in the template)?`, how));
  }
  return found.every((each) => each === undefined) ? undefined : found;
}

async function askWeighting(unit: LengthUnit, ask: Chooser): Promise<string | undefined> {
  const way = await ask.choose('More border at the bottom?', [
    { value: KEEP, hint: 'the template says it' },
    { value: 'none', hint: 'all alike' },
    { value: 'add', hint: 'by a length' },
    { value: '5/4', hint: 'a quarter more' },
    { value: 'diagonal', hint: 'by the diagonal of the mat' },
  ]);
  if (way === KEEP) return undefined;
  if (way !== 'add') return way;
  return `add ${await ask.text(`How much more (${unit})?`, { example: EXAMPLES[unit].small, wrong: wrongLength(unit) })}`;
}

async function askHead(shop: Shop, ask: Chooser): Promise<string | undefined> {
  const heads = [...shop.heads.values()];
  if (heads.length < 2) return heads[0]?.id;
  return ask.choose(
    'Which head cuts it?',
    heads.map(({ id, bevel }) => ({ value: id, hint: `${bevel}°` })),
  );
}

async function askBoards(places: Places, shop: Shop, ask: Chooser): Promise<Answers['boards']> {
  if (shop.boards.size === 0) return undefined;
  const known = [...shop.boards.values()].map(({ id, name, thickness, colour }) => ({
    value: id,
    hint: `${name}, ${colour}, ${showLength(thickness, 'mm')}`,
  }));
  const boards: (string | undefined)[] = [];
  for (let layer = 0; layer < places.layers; layer++) {
    const what = layer === 0 ? 'the top mat' : `under mat ${layer}`;
    const board = await ask.choose(`Board of ${what}?`, [...known, { value: KEEP, hint: "the template's own" }]);
    boards.push(board === KEEP ? undefined : board);
  }
  return boards.every((board) => board === undefined) ? undefined : boards;
}
