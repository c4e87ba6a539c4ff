import { error, type Problem } from '../problems/problem.ts';
import { quoted, word } from '../problems/quoted.ts';

/** A value of a job's text that is tried instead of the one that is written there. */
export interface Change {
  readonly path: Problem['path'];
  /** As it would be written: a text of digits is a number, true and false are what they say. */
  readonly value: string;
}

const STEP = /^(?:\.?([A-Za-z][A-Za-z0-9]*)|\[(\d{1,3})\])/;
const EXAMPLE = 'write for example mat.layers[1].board=bone-4,slate-4 (the first of a list is [0])';
/** More than a customer can choose from. */
const MOST = 12;

/** `mat.layers[1].board` as keys and places in lists; undefined where it is none. */
export function parsePlace(text: string): Problem['path'] | undefined {
  const path: (string | number)[] = [];
  for (let rest = text; rest !== ''; ) {
    const step = STEP.exec(rest);
    if (step === null) return undefined;
    path.push(step[1] ?? Number(step[2]));
    rest = rest.slice(step[0].length);
  }
  return path.length === 0 ? undefined : path;
}

/** `mat.layers[1].board=a,b,c` as one change for each value, or what is wrong with it. */
export function parseVary(text: string): { readonly changes: readonly Change[] } | { readonly problem: Problem } {
  const refuse = (message: string) => ({ problem: error('vary-unreadable', [], message, EXAMPLE) });
  const equals = text.indexOf('=');
  if (equals < 1) return refuse(`${quoted(text)} does not say what is to be varied, and how`);
  const path = parsePlace(text.slice(0, equals).trim());
  if (path === undefined) return refuse(`${quoted(text.slice(0, equals))} is not a place in a job`);
  const values = text
    .slice(equals + 1)
    .split(',')
    .map((value) => value.trim());
  if (values.includes('')) return refuse(`${quoted(text)} has a value missing`);
  if (values.length > MOST) return refuse(`${values.length} values are more than the ${MOST} that are made at once`);
  if (new Set(values).size < values.length) return refuse(`${quoted(text)} has a value twice`);
  return { changes: values.map((value) => ({ path, value })) };
}

const plainValue = (value: string): string | number | boolean => {
  if (/^-?\d+(?:\.\d+)?$/.test(value)) return Number(value);
  return value === 'true' ? true : value === 'false' ? false : value;
};

/**
 * The plain tree of a job with one value changed; nothing of the given tree is. Keys on the way may be missing, entries of
 * lists may not.
 */
export function changed(
  tree: unknown,
  { path, value }: Change,
): { readonly tree: unknown } | { readonly problem: Problem } {
  const problem = outOfPlace(tree, path);
  return problem === undefined ? { tree: replaced(tree, path, plainValue(value)) } : { problem };
}

function outOfPlace(tree: unknown, path: Problem['path']): Problem | undefined {
  let node = tree;
  for (const [i, step] of path.entries()) {
    const key = typeof step === 'number' ? `[${step}]` : word(step);
    const refuse = (what: string): Problem => {
      const here = i === 0 ? 'the job' : path.slice(0, i).join('.');
      return error('vary-path', path.slice(0, i), `${here} ${what}, so there is no ${key} in it to vary`, EXAMPLE);
    };
    if (Array.isArray(node)) {
      if (typeof step !== 'number' || step >= node.length) return refuse(`is a list of ${node.length}`);
      node = node[step];
    } else if (node === undefined || (typeof node === 'object' && node !== null)) {
      if (typeof step === 'number') return refuse('is no list');
      node = (node as Readonly<Record<string, unknown>> | undefined)?.[step];
    } else return refuse('is a single value');
  }
  return undefined;
}

function replaced(node: unknown, [step, ...rest]: Problem['path'], value: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(node)) return node.map((each, i) => (i === step ? replaced(each, rest, value) : each));
  const map = (node ?? {}) as Readonly<Record<string, unknown>>;
  return Object.assign(Object.create(null), map, { [step]: replaced(map[step], rest, value) });
}
