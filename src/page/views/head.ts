import { type ComponentChild, h } from 'preact';
import { startRun } from '../cutter/run.ts';
import { backToPiece, hasPiece, openShop } from '../files/desk.ts';
import { savedAt, saveJob } from '../files/handles.ts';
import { kept } from '../files/keeping.ts';
import { plainText } from '../form/typed.ts';
import { sources } from '../out/sources.ts';
import { canRedo, canUndo, lastChange, nextChange, redo, undo } from '../state/history.ts';
import { type Open, open, said, text } from '../state/piece.ts';
import { type Place, place, textShown } from '../state/place.ts';
import { shownUnit, wishedUnit } from '../state/shown.ts';
import { worksHere } from '../state/works-here.ts';

const PLACES: readonly (readonly [Place, string])[] = [
  ['pieces', 'Pieces'],
  ['describe', 'Describe'],
  ['out', 'Print and save'],
  ['cutter', 'At the cutter'],
  ['day', 'The day'],
  ['shop', 'The shop'],
];

/** The head of the page: where one is, what is open, and what holds everywhere. */
export function Head(): ComponentChild {
  const now = open.value;
  return h('header', { class: 'head' }, [
    h(
      'h1',
      { key: 'name' },
      place.value === 'day' ? 'The day' : now === undefined || place.value === 'pieces' ? 'Matwright' : titleOf(now),
    ),
    h(
      'nav',
      { key: 'places', class: 'places', 'aria-label': 'Places' },
      PLACES.map(([each, words]) =>
        h(
          'button',
          {
            key: each,
            type: 'button',
            disabled: !['pieces', 'shop', 'day'].includes(each) && !hasPiece(),
            ...(place.value === each ? { 'aria-current': 'page' as const } : {}),
            onClick: () => go(each),
          },
          words,
        ),
      ),
    ),
    worksHere() ? h(Doing, { key: 'doing' }) : null,
  ]);
}

/** At the cutter stands the piece that is open; the shop is another thing on the same desk. */
function go(next: Place): void {
  switch (next) {
    case 'shop':
      if (open.value?.of === undefined) void openShop();
      else place.value = next;
      return;
    case 'cutter':
      backToPiece('describe');
      cutIt();
      return;
    case 'day':
      backToPiece('pieces');
      place.value = 'day';
      return;
    case 'pieces':
    case 'describe':
    case 'out':
      backToPiece(next);
      return;
    default: {
      const never: never = next;
      throw new TypeError(`unknown place ${JSON.stringify(never)}`);
    }
  }
}

function cutIt(): void {
  const now = open.value;
  if (now === undefined) return;
  const title = plainText(said(['title'])) || now.file;
  void startRun({ id: now.id, title }, sources);
}

const titleOf = ({ of, file }: Open): string =>
  of === 'shop' ? 'The shop' : of === 'readings' ? 'Readings' : plainText(said(['title'])) || file;

function Doing(): ComponentChild {
  return h('div', { class: 'doing' }, [
    h(
      'button',
      { key: 'undo', type: 'button', disabled: !canUndo.value, title: lastChange.value, onClick: undo },
      'Undo',
    ),
    h(
      'button',
      { key: 'redo', type: 'button', disabled: !canRedo.value, title: nextChange.value, onClick: redo },
      'Redo',
    ),
    h(
      'button',
      {
        key: 'text',
        type: 'button',
        'aria-pressed': textShown.value,
        onClick: () => (textShown.value = !textShown.value),
      },
      'Text',
    ),
    h(
      'button',
      { key: 'save', type: 'button', onClick: () => void saveJob() },
      open.value?.of === 'shop'
        ? 'Save the shop'
        : open.value?.of === 'readings'
          ? 'Save the readings'
          : 'Save the job',
    ),
    h(Units, { key: 'units' }),
    h('span', { key: 'kept', class: 'kept' }, keptWords()),
  ]);
}

function Units(): ComponentChild {
  return h(
    'span',
    { class: 'units', role: 'group', 'aria-label': 'Sizes are shown in' },
    (['in', 'mm', 'cm'] as const).map((unit) =>
      h(
        'button',
        {
          key: unit,
          type: 'button',
          'aria-pressed': shownUnit.value === unit,
          'aria-label': { in: 'inches', mm: 'millimetres', cm: 'centimetres' }[unit],
          onClick: () => (wishedUnit.value = unit),
        },
        unit,
      ),
    ),
  );
}

function keptWords(): string {
  const saved = savedAt.value[open.value?.id ?? ''];
  const file =
    saved !== undefined
      ? saved.text === text.value
        ? `saved to a file at ${saved.time}`
        : `last saved to a file at ${saved.time}`
      : 'not saved to a file';
  switch (kept.value) {
    case 'not yet':
      return file;
    case 'kept':
      return `kept in this browser only; ${file}`;
    case 'failed':
      return `not kept in this browser; ${file}`;
    case 'newer':
      return `changed in another window; ${file}`;
    default: {
      const never: never = kept.value;
      throw new TypeError(`unknown state ${JSON.stringify(never)}`);
    }
  }
}
