import type { Step } from '../../outputs/options.ts';
import type { Answered, Asked, AskName, Asks } from './answers.ts';

type Answers = {
  readonly [Name in AskName]?: (
    request: Asks[Name]['request'],
    progress: (step: Step) => void,
  ) => Promise<Asks[Name]['answer']>;
};

/** What a worker has to speak with its page. */
interface Port {
  onmessage: ((event: { readonly data: Asked }) => void) | null;
  readonly postMessage: (answered: Answered) => void;
}

/** A worker's side: questions are answered one after the other, by their numbers. */
export function answerWith(answers: Answers): void {
  const port = globalThis as typeof globalThis & Port;
  const say = (answered: Answered): void => port.postMessage(answered);
  const answer = async <Name extends AskName>({ number, name, request }: Asked<Name>): Promise<void> => {
    try {
      const found = answers[name];
      if (found === undefined) throw new TypeError(`nobody here answers ${name}`);
      say({ number, answer: await found(request, (step) => say({ number, step })) });
    } catch (error) {
      say({ number, broken: error instanceof Error ? `${error.message}` : String(error) });
    }
  };
  let before: Promise<void> = Promise.resolve();
  port.onmessage = ({ data }) => {
    before = before.then(() => answer(data));
  };
}
