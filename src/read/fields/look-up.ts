import { nearest } from '../../problems/nearest.ts';
import { error, type Problem } from '../../problems/problem.ts';
import { word } from '../../problems/quoted.ts';

/** Told at most; a shop may list hundreds. */
const MOST_NAMES = 12;

/** A thing of the shop by its name; where it is not there, a problem names the nearest one that is. */
export function lookUp<T>(
  what: 'board' | 'head' | 'printer' | 'moulding' | 'frame' | 'glazing' | 'backing',
  name: string | undefined,
  known: ReadonlyMap<string, T>,
  path: Problem['path'],
  problems: Problem[],
): T | undefined {
  if (name === undefined) return undefined;
  const found = known.get(name);
  if (found !== undefined) return found;
  const names = [...known.keys()];
  const near = nearest(name, names);
  const more = names.length > MOST_NAMES ? ' …' : '';
  const there =
    names.length === 0 ? `the shop’s file lists no ${what}` : `known: ${names.slice(0, MOST_NAMES).join(', ')}${more}`;
  const hint = near === undefined ? there : `did you mean ${near}? ${there}`;
  problems.push(error(`${what}-unknown`, path, `the shop has no ${what} called ${word(name)}`, hint));
  return undefined;
}
