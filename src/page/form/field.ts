import { useSignal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { type Edit, edit, written } from '../state/edit.ts';
import { endRun } from '../state/history.ts';
import { type Path, said, text } from '../state/piece.ts';
import { jobUnit, lit, shown, shownUnit, sizeOf } from '../state/shown.ts';
import { Told, toldAt } from './told.ts';
import { lengthTyped, plainText } from './typed.ts';
import { Why } from './why.ts';

export interface FieldOf {
  readonly label: string;
  readonly path: Path;
  /** Lengths take every unit; other texts stand as they are typed. */
  readonly kind?: 'length' | 'text' | 'count';
  /** Sizes of the piece that stand in the field where it is empty, by their names in the reasons. */
  readonly sizes?: readonly string[];
  /** What is usual where the field is empty and no size says it. */
  readonly usual?: string;
  readonly example?: string;
  /** What else is set with it, or taken out. */
  readonly also?: (value: string) => readonly Edit[];
}

export const idOf = (path: Path): string => `at-${path.join('-')}`;

/** What a field that is left empty comes to, in brackets. */
function workedOut(sizes: readonly string[], usual: string | undefined): string {
  const found = sizes.map(sizeOf);
  if (sizes.length > 0 && found.every((each) => each !== undefined)) {
    const words = found.map((each) => shown(each!));
    const unit = ` ${shownUnit.value}`;
    const [first, ...rest] = words;
    if (rest.length === 0) return `(${first})`;
    return `(${[first!.replace(unit, ''), ...rest].join(' × ')})`;
  }
  return usual === undefined ? '' : `(${usual})`;
}

/** One field of the job: given where something stands in it, else worked out. */
export function Field({ label, path, kind = 'length', sizes = [], usual, example, also }: FieldOf): ComponentChild {
  const typing = useSignal<{ readonly typed: string; readonly made: string } | undefined>(undefined);
  const id = idOf(path);
  const value = plainText(said(path));
  // What was typed stands there untidied until something else has changed the text: an undo, a drag, another piece.
  const now = typing.value?.made === text.value ? typing.value.typed : value;
  const out = workedOut(sizes, usual);
  const told = toldAt(path);
  const set = (typed: string): void => {
    const words = typed.trim();
    const next =
      words === ''
        ? undefined
        : kind === 'length'
          ? lengthTyped(words, shownUnit.value, jobUnit.value)
          : kind === 'count'
            ? written(words)
            : words;
    edit([{ path, value: next }, ...(also?.(words) ?? [])], label, `field ${id}`);
    typing.value = { typed, made: text.value };
  };
  const state = now.trim() === '' ? (out === '' ? 'empty' : 'worked-out') : 'given';
  const about = `${id}-about`;
  return h('div', { class: `field ${state}${told.length > 0 ? ' wrong' : ''}` }, [
    h('label', { key: 'label', for: id }, label),
    h('span', { key: 'box', class: 'box' }, [
      h('input', {
        key: 'input',
        id,
        type: 'text',
        inputMode: kind === 'count' ? 'numeric' : 'text',
        autoComplete: 'off',
        spellcheck: false,
        value: now,
        placeholder: out === '' && example !== undefined ? `e.g. ${example}` : out,
        'aria-describedby': about,
        ...(told.some(({ severity }) => severity === 'error') ? { 'aria-invalid': 'true' } : {}),
        onInput: (event: Event) => set((event.currentTarget as HTMLInputElement).value),
        onFocus: () => {
          lit.value = sizes;
        },
        onBlur: () => {
          typing.value = undefined;
          lit.value = [];
          endRun();
        },
      }),
      state === 'worked-out' && sizes.length > 0 ? h(Why, { key: 'why', sizes, label }) : null,
    ]),
    h('span', { key: 'about', id: about, class: 'about' }, aboutWords(state, out, sizes)),
    h(Told, { key: 'told', path }),
  ]);
}

function aboutWords(state: string, out: string, sizes: readonly string[]): string {
  if (state === 'worked-out') return sizes.length > 0 ? `worked out ${out}` : `as usual ${out}`;
  if (state === 'given') return sizes.length > 0 ? 'given' : '';
  return '';
}

export interface ChoiceOf {
  readonly label: string;
  readonly path: Path;
  readonly words: readonly (readonly [value: string, shown: string])[];
  readonly now?: string;
  readonly choose?: (value: string) => readonly Edit[];
}

/** A word out of some. */
export function Choice({ label, path, words, now, choose }: ChoiceOf): ComponentChild {
  const id = idOf(path);
  const value = now ?? plainText(said(path));
  return h('div', { class: 'field choice' }, [
    h('label', { key: 'label', for: id }, label),
    h(
      'select',
      {
        key: 'select',
        id,
        value,
        onChange: (event: Event) => {
          const chosen = (event.currentTarget as HTMLSelectElement).value;
          edit(choose?.(chosen) ?? [{ path, value: chosen === '' ? undefined : chosen }], label);
        },
      },
      words.map(([each, words_]) => h('option', { key: each, value: each, selected: each === value }, words_)),
    ),
    h(Told, { key: 'told', path }),
  ]);
}

export interface SwitchOf {
  readonly label: string;
  readonly words: readonly (readonly [value: string, shown: string])[];
  readonly now: string;
  readonly choose: (value: string) => void;
}

/** One of two or three ways to say the same, all of them to be seen. */
export function Ways({ label, words, now, choose }: SwitchOf): ComponentChild {
  return h('fieldset', { class: 'ways' }, [
    h('legend', { key: 'legend' }, label),
    ...words.map(([value, words_]) =>
      h('label', { key: value, class: value === now ? 'chosen' : '' }, [
        h('input', {
          key: 'input',
          type: 'radio',
          name: label,
          value,
          checked: value === now,
          onChange: () => choose(value),
        }),
        h('span', { key: 'words' }, words_),
      ]),
    ),
  ]);
}

/** Yes or no. */
export function Tick({
  label,
  path,
  usual = false,
}: {
  readonly label: string;
  readonly path: Path;
  readonly usual?: boolean;
}): ComponentChild {
  const value = said(path);
  const on = value === undefined ? usual : value === true;
  return h('div', { class: 'field tick' }, [
    h('label', { key: 'label' }, [
      h('input', {
        key: 'input',
        id: idOf(path),
        type: 'checkbox',
        checked: on,
        onChange: () => edit([{ path, value: on === usual ? !usual : undefined }], label),
      }),
      h('span', { key: 'words' }, label),
    ]),
    h(Told, { key: 'told', path }),
  ]);
}
