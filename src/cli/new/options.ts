import type { Command } from 'commander';
import type { AnswerName, Answers } from '../../job/answers.ts';
import type { Misfit } from '../../job/template-places.ts';
import { UsageError } from '../usage.ts';

/** What commander hands over. */
export interface Options extends Omit<Answers, 'openings' | 'boards' | 'artworks'> {
  readonly openings?: string;
  readonly board?: readonly string[];
  readonly artwork?: readonly string[];
  readonly out?: string;
  readonly list?: boolean;
  readonly yes?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

interface AnswerOption {
  readonly option: string;
  readonly value: string;
  readonly help: string;
  readonly several?: true;
  /** As a question names it. */
  readonly words: string;
}

/** The option that gives each answer. */
export const ANSWER_OPTIONS: { readonly [Name in AnswerName]: AnswerOption } = {
  title: { option: 'title', value: '<text>', help: 'what the piece is called', words: 'the title' },
  customer: { option: 'customer', value: '<text>', help: 'whom it is for', words: 'the customer' },
  units: {
    option: 'units',
    value: '<unit>',
    help: "the unit of bare numbers: in, mm or cm (default: the shop's, else the template's)",
    words: 'the unit',
  },
  openings: {
    option: 'openings',
    value: '<count>',
    help: "how many openings (default: the template's)",
    words: 'how many openings',
  },
  artworks: {
    option: 'artwork',
    value: '<size>',
    help: 'width x height of the artwork; with several openings once for each, in their order',
    several: true,
    words: 'the artwork',
  },
  outer: { option: 'outer', value: '<size>', help: 'width x height of the whole mat', words: 'the outer size' },
  frame: {
    option: 'frame',
    value: '<size>',
    help: "width x height inside the frame's rebate, instead of the outer size",
    words: 'the frame',
  },
  border: {
    option: 'border',
    value: '<length>',
    help: 'border of the mat; without an outer size that one follows from it',
    words: 'the border',
  },
  weighting: {
    option: 'weighting',
    value: '<text>',
    help: 'more border at the bottom: none, diagonal, "add 1/2" or a ratio such as 5/4',
    words: 'the weighting',
  },
  boards: {
    option: 'board',
    value: '<name>',
    help: 'a board of the shop for the top mat; once more for each mat under it',
    several: true,
    words: 'the board',
  },
  head: {
    option: 'head',
    value: '<name>',
    help: "a head of the shop, or none (default: the shop's only one)",
    words: 'the head',
  },
  reveal: { option: 'reveal', value: '<length>', help: 'reveal of every under mat', words: 'the reveal' },
  overlap: {
    option: 'overlap',
    value: '<length>',
    help: 'mat over the artwork on each side',
    words: 'the overlap',
  },
  float: {
    option: 'float',
    value: '<length>',
    help: 'paper shown around the artwork on each side, instead of an overlap',
    words: 'the float',
  },
};

export function answerOptions(command: Command): Command {
  for (const { option, value, help, several } of Object.values(ANSWER_OPTIONS)) {
    const flags = `--${option} ${value}`;
    if (several === undefined) command.option(flags, help);
    else command.option(flags, help, (one: string, before: readonly string[] = []) => [...before, one]);
  }
  return command;
}

/** What the options say of the job. */
export function answersOf(options: Options): Answers {
  const { openings, board, artwork, title, customer, units, outer, frame, border, weighting, head, reveal } = options;
  return {
    title,
    customer,
    units,
    openings: openings === undefined ? undefined : countOf(openings),
    artworks: artwork,
    outer,
    frame,
    border,
    weighting,
    boards: board,
    head,
    reveal,
    overlap: options.overlap,
    float: options.float,
  };
}

export const MOST_OPENINGS = 40;

export const isCount = (text: string): boolean => /^[1-9]\d?$/u.test(text) && Number(text) <= MOST_OPENINGS;

function countOf(text: string): number {
  if (isCount(text)) return Number(text);
  throw new UsageError(`--openings ${text}: give a whole number from 1 to ${MOST_OPENINGS}`);
}

export const optionOf = (name: AnswerName): string => `--${ANSWER_OPTIONS[name].option}`;

/** Options that there is no place for, in one line. */
export const misfitWords = (template: string, found: readonly Misfit[]): string =>
  found
    .map(({ names, why, remedy }) =>
      names.length > 1
        ? `${names.map(optionOf).join(' and ')} do not go together: ${why}; ${remedy}`
        : `${optionOf(names[0]!)} has no place in the template ${template}: ${why}; ${remedy}`,
    )
    .join('\nmatwright: ');
