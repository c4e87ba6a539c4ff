import type { Problem } from '../../problems/problem.ts';

/** A part of a message as a sentence by itself. */
export const sentence = (text: string): string =>
  text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.?!]$/u.test(text) ? '' : '.'}`;

/** What a problem says, and what to do about it. */
export const told = ({ message, hint }: Pick<Problem, 'message' | 'hint'>): string =>
  [message, hint].map(sentence).join(' ').trim();
