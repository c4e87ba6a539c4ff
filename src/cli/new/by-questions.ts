import { type AnswerName, type Answers, givenNames } from '../../job/answers.ts';
import { fileStem } from '../../job/file-stem.ts';
import { isThere } from '../input.ts';
import { warn } from '../say.ts';
import { ANSWER_OPTIONS, type Options } from './options.ts';
import { askJob, type Chooser } from './questions.ts';
import { answersIn, type Started, type Starter, start, whereAsked } from './starter.ts';

/** A job that can be written. */
export interface Made {
  readonly file: string;
  readonly started: Started;
}

/** Where nothing points to an answer, these are asked again. */
const SIZES: readonly AnswerName[] = ['outer', 'frame', 'border', 'artworks'];

/** Asks until the answers go together; the file's name is asked for where there is one of that name. */
export async function byQuestions(
  starter: Starter,
  given: Answers,
  options: Pick<Options, 'out'>,
  ask: Chooser,
): Promise<Made> {
  const { name } = starter.template;
  let answers = await askJob(given, starter, ask);
  let file = options.out ?? `${fileStem(answers.title ?? name)}.yaml`;
  while (isThere(file)) {
    const wrong = (answer: string) => (isThere(answer) ? `${answer} is there already` : undefined);
    file = (await ask.text(`${file} is there already. Which file instead?`, { example: 'job-2.yaml', wrong })) ?? file;
  }
  for (;;) {
    const started = await start(starter, answers, file);
    if (started.solved.ok) return { file, started };
    // What is only worth a warning may be gone with the next answer.
    const problems = started.solved.problems.filter(({ severity }) => severity === 'error');
    const said = (each: AnswerName) => ANSWER_OPTIONS[each].words;
    warn(whereAsked(problems, answers, name, file, said));
    const found = answersIn(problems, answers);
    const again = new Set<AnswerName>([...(found.size === 0 ? SIZES : found)]);
    const kept = givenNames(answers).filter((each) => !again.has(each));
    answers = await askJob(Object.fromEntries(kept.map((each) => [each, answers[each]])), starter, ask, again);
  }
}
