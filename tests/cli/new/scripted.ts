import type { Chooser } from '../../../src/cli/new/questions.ts';

export interface Asked {
  readonly question: string;
  /** What the answer was refused with, each time. */
  readonly refused: string[];
}

/** Gives each question the answer of the first pattern that it matches: several in turn, and empty ones where there is none. */
export function scripted(answers: readonly (readonly [question: RegExp, ...answers: readonly string[]])[]): Chooser & {
  readonly asked: Asked[];
} {
  const asked: Asked[] = [];
  const given = new Map<RegExp, number>();
  const next = (question: string): string => {
    if (asked.length > 100) throw new Error(`asked without end: ${question}`);
    const [pattern, ...its] = answers.find(([each]) => each.test(question)) ?? [];
    if (pattern === undefined) return '';
    const at = given.get(pattern) ?? 0;
    given.set(pattern, at + 1);
    return its[Math.min(at, its.length - 1)] ?? '';
  };
  return {
    asked,
    async text(question, { optional = false, wrong, example = '' }) {
      const one: Asked = { question, refused: [] };
      asked.push(one);
      for (let tries = 0; tries < 5; tries += 1) {
        const answer = next(question) || (optional ? '' : example);
        const said = answer === '' ? undefined : wrong?.(answer);
        if (said === undefined) return answer === '' ? undefined : answer;
        one.refused.push(said);
      }
      throw new Error(`${question} has no right answer`);
    },
    async confirm(question, usual) {
      asked.push({ question, refused: [] });
      return usual;
    },
    async choose(question, options, usual) {
      asked.push({ question, refused: [] });
      const answer = next(question);
      const kept = options.find(({ value }) => value === 'as it is')?.value;
      const chosen = answer === '' ? (usual ?? kept ?? options[0]!.value) : answer;
      if (options.every(({ value }) => value !== chosen)) throw new Error(`${question} does not offer ${chosen}`);
      return chosen;
    },
  };
}
