import { confirm, isCancel, select, text } from '@clack/prompts';
import type { Asker } from './ask-readings.ts';
import { UsageError } from './usage.ts';

/** Asks at the terminal. This module is loaded only where something is asked. */
export const TERMINAL: Asker = {
  async text(question, { example, optional = false, wrong }) {
    const answer = await text({
      message: question,
      ...(example === undefined ? {} : { placeholder: example }),
      validate: (value) => {
        const given = (value ?? '').trim();
        if (given === '') return optional ? undefined : 'an answer is needed here';
        return wrong?.(given);
      },
    });
    if (isCancel(answer)) throw new UsageError('stopped; nothing was changed');
    const given = (answer ?? '').trim();
    return given === '' ? undefined : given;
  },
  async confirm(question, usual) {
    const answer = await confirm({ message: question, initialValue: usual });
    if (isCancel(answer)) throw new UsageError('stopped; nothing was changed');
    return answer;
  },
};

/** One of several, by its value. */
export async function pick(
  question: string,
  options: readonly { readonly value: string; readonly hint: string }[],
): Promise<string> {
  const answer = await select({
    message: question,
    options: options.map(({ value, hint }) => ({ value, label: value, hint })),
  });
  if (isCancel(answer)) throw new UsageError('stopped; nothing was changed');
  return answer;
}
