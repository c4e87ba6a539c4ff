import { parseLength } from '../../units/parse.ts';

/** Somebody who answers, one question at a time. */
export interface Asker {
  /** The answer as it was typed; undefined where it may be left empty and was. `wrong` says what is wrong with one. */
  text(
    question: string,
    options: {
      readonly example?: string;
      readonly optional?: boolean;
      readonly wrong?: (answer: string) => string | undefined;
    },
  ): Promise<string | undefined>;
  confirm(question: string, usual: boolean): Promise<boolean>;
}

export const quoted = (answer: string | undefined): string => JSON.stringify(answer ?? '');

const noLength = (answer: string): string | undefined => {
  const parsed = parseLength(answer, 'mm');
  return parsed.ok ? undefined : `${parsed.message}; ${parsed.hint}`;
};

/** A length as it was typed, in quotes; asked again until it is one. */
export const length = async (
  ask: Asker,
  question: string,
  example: string,
  optional = false,
): Promise<string | undefined> => {
  const answer = await ask.text(question, { example, optional, wrong: noLength });
  return answer === undefined ? undefined : quoted(answer);
};

export const line = (key: string, value: string | undefined): string =>
  value === undefined ? '' : `${key}: ${value}\n`;
export const flow = (pairs: readonly (readonly [string, string | undefined])[]): string =>
  `{${pairs.flatMap(([key, value]) => (value === undefined ? [] : [`${key}: ${value}`])).join(', ')}}`;
