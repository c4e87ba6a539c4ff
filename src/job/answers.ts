/** What a starter job is told; texts as they are written in a job, bare numbers in the job's unit. */
export interface Answers {
  readonly title?: string | undefined;
  readonly customer?: string | undefined;
  readonly units?: string | undefined;
  /** How many openings; as many as the template has without it. */
  readonly openings?: number | undefined;
  readonly outer?: string | undefined;
  /** Measured inside the rebate. */
  readonly frame?: string | undefined;
  readonly border?: string | undefined;
  /** `none`, `diagonal`, `add 1/2`, or a ratio. */
  readonly weighting?: string | undefined;
  /** Boards of the shop, top mat first; the template's own where one is undefined. */
  readonly boards?: readonly (string | undefined)[] | undefined;
  /** A head of the shop. */
  readonly head?: string | undefined;
  /** Of every layer below the top mat. */
  readonly reveal?: string | undefined;
  /** One for each opening that has an artwork, in their order; the template's own where one is undefined. */
  readonly artworks?: readonly (string | undefined)[] | undefined;
  readonly overlap?: string | undefined;
  readonly float?: string | undefined;
}

export type AnswerName = keyof Answers;

/** In the order in which they are written into a job: sizes before the border that may go with them. */
const NAMES: { readonly [Name in AnswerName]: true } = {
  title: true,
  customer: true,
  units: true,
  openings: true,
  outer: true,
  frame: true,
  border: true,
  weighting: true,
  boards: true,
  head: true,
  reveal: true,
  artworks: true,
  overlap: true,
  float: true,
};

const ANSWERS = Object.keys(NAMES) as readonly AnswerName[];

export const givenNames = (answers: Answers): readonly AnswerName[] =>
  ANSWERS.filter((name) => answers[name] !== undefined);

/** The answer that a place of a job comes from. */
export function answerAt(path: readonly (string | number)[], answers: Answers): AnswerName | undefined {
  const keys = path.filter((step) => typeof step === 'string');
  const [top, next] = keys;
  const names: readonly AnswerName[] =
    top === 'mat'
      ? next === 'layers'
        ? keys.includes('reveal')
          ? ['reveal']
          : ['boards']
        : next === undefined
          ? ['outer', 'frame', 'border']
          : ANSWERS.filter((name) => name === next)
      : top === 'openings'
        ? next === 'artwork'
          ? ['artworks']
          : next === undefined
            ? ['openings', 'artworks']
            : ANSWERS.filter((name) => name === next)
        : top === 'bench'
          ? ['head']
          : top === 'arrange'
            ? ['openings']
            : ANSWERS.filter((name) => name === top);
  return names.find((name) => answers[name] !== undefined);
}
