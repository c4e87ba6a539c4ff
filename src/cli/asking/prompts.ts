import { autocomplete, confirm, isCancel, select, text } from '@clack/prompts';
import { defined } from '../../problems/defined.ts';
import type { Chooser } from '../new/questions.ts';
import { UsageError } from '../usage.ts';

interface Choice {
  readonly value: string;
  readonly hint: string;
}

function answered<T>(answer: T): Exclude<T, symbol> {
  if (isCancel(answer)) throw new UsageError('stopped; nothing was changed');
  return answer as Exclude<T, symbol>;
}

/** Asks at the terminal. This module is loaded only where something is asked. */
export const TERMINAL: Chooser = {
  async text(question, { example, optional = false, wrong }) {
    const answer = await text({
      message: question,
      ...defined({ placeholder: example }),
      validate: (value) => {
        const given = (value ?? '').trim();
        if (given === '') return optional ? undefined : 'an answer is needed here';
        return wrong?.(given);
      },
    });
    const given = (answered(answer) ?? '').trim();
    return given === '' ? undefined : given;
  },
  async confirm(question, usual) {
    return answered(await confirm({ message: question, initialValue: usual }));
  },
  async choose(question, options, usual) {
    const choice = { message: question, options: options.map(labelled) };
    return answered(await select(usual === undefined ? choice : { ...choice, initialValue: usual }));
  },
};

/** One of many, found by typing a part of its name or of what it is for. */
export async function search(question: string, options: readonly Choice[]): Promise<string> {
  const answer = await autocomplete({
    message: question,
    options: options.map(labelled),
    maxItems: 8,
    filter: (typed, { value }) => {
      const { hint = '' } = options.find((each) => each.value === value) ?? {};
      const words = typed.toLowerCase().split(/\s+/u);
      return words.every((word) => `${value} ${hint}`.toLowerCase().includes(word));
    },
  });
  return answered(answer);
}

const labelled = ({ value, hint }: Choice) => ({ value, label: value, hint });
