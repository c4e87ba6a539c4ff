import { signal, untracked } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import type { Clashing, Problem } from '../../problems/problem.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { edit, refused } from '../state/edit.ts';
import { type Path, problems } from '../state/piece.ts';
import { sentence } from '../state/sentence.ts';
import { isHere, toldOf } from '../state/told-of.ts';

const begins = (path: Path, by: Path): boolean => by.every((step, i) => path[i] === step);
const same = (a: Path, b: Path): boolean => a.length === b.length && begins(a, b);

/** Places that the fields stand for which are there now, so that what belongs to none of them can be said above all. */
const fields = new Map<string, number>();
/** Counts the fields that came and went. */
const turns = signal(0);

function register(key: string): () => void {
  const add = (by: 1 | -1): void => {
    fields.set(key, (fields.get(key) ?? 0) + by);
    turns.value += 1;
  };
  add(1);
  return () => add(-1);
}

/** Every message is said at the field that it speaks of; a clash of sizes at each of them. What is said of another file is at none. */
export function toldAt(path: Path): readonly Problem[] {
  return [...problems.value, ...refused.value].filter(isHere).filter((problem) => {
    if (problem.clash !== undefined) return problem.clash.some((each) => same(each.path, path));
    return same(problem.path, path) || (begins(problem.path, path) && nearestField(problem.path) === path.join('.'));
  });
}

/** The field that says most of a place. */
function nearestField(path: Path): string | undefined {
  void turns.value;
  for (let length = path.length; length > 0; length--) {
    const key = path.slice(0, length).join('.');
    if ((fields.get(key) ?? 0) > 0) return key;
  }
  return undefined;
}

/** What no field of the form stands for. */
export const unplaced = (): readonly Problem[] =>
  [...problems.value, ...refused.value].filter(
    (problem) => problem.clash === undefined && (!isHere(problem) || nearestField(problem.path) === undefined),
  );

export function Told({ path }: { readonly path: Path }): ComponentChild {
  const key = path.join('.');
  useLayoutEffect(() => untracked(() => register(key)), [key]);
  const told = toldAt(path);
  if (told.length === 0) return null;
  return h(
    'div',
    { class: 'told' },
    told.map((problem, i) => h(OneTold, { key: `${problem.code} ${i}`, problem, path })),
  );
}

/** Above all fields, what none of those that are open says. */
export function Unplaced(): ComponentChild {
  const told = unplaced();
  if (told.length === 0) return null;
  return h(
    'div',
    { class: 'told above' },
    told.map((problem, i) => h(OneTold, { key: `${problem.code} ${i}`, problem, path: problem.path })),
  );
}

export function OneTold({ problem, path }: { readonly problem: Problem; readonly path: Path }): ComponentChild {
  const { clash, severity, message } = problem;
  const here = clash?.find((each) => same(each.path, path));
  const words = clash === undefined || same(problem.path, path) ? sentence(message) : '';
  return h('div', { class: severity }, [
    h('p', { key: 'words' }, [
      h('strong', { key: 'kind' }, severity === 'error' ? 'Does not go: ' : 'Mind: '),
      clash === undefined ? toldOf(problem) : words || against(here, clash),
    ]),
    here === undefined ? null : h(WaysOut, { key: 'out', here }),
  ]);
}

const against = (here: Clashing | undefined, clash: readonly Clashing[]): string => {
  const others = clash
    .filter((each) => each !== here)
    .map(({ what, shown }) => (shown === undefined ? what : `${what} ${shown}`));
  return `${here?.what ?? 'this'} ${here?.shown ?? ''} clashes with ${others.join(', ')}.`;
};

/** At each of the fields that clash, the ways out that it has itself: nothing is chosen silently. */
function WaysOut({ here }: { readonly here: Clashing }): ComponentChild {
  const { what, fixed, value, instead, insteadShown } = here;
  const set = (next: Plain | undefined, words: string) => (): void => {
    edit(
      [here.path, ...here.also].map((path) => ({ path, value: next })),
      words,
    );
  };
  const settable = value !== undefined && insteadShown !== undefined && (instead ?? 0) > 0 && !isSize(here);
  return h('div', { class: 'ways-out' }, [
    fixed === true
      ? null
      : h(
          'button',
          { key: 'free', type: 'button', onClick: set(undefined, `${what} is worked out`) },
          `Let the ${what} be worked out`,
        ),
    settable
      ? h(
          'button',
          { key: 'set', type: 'button', onClick: set(insteadShown, `${what} ${insteadShown}`) },
          `Make it ${insteadShown}`,
        )
      : null,
  ]);
}

/** Of a size, width × height, only one of the two clashes: it is not replaced by one length. */
const isSize = ({ path }: Clashing): boolean =>
  ['outer', 'size', 'artwork', 'inside', 'nominal'].includes(String(path.at(-1)));
