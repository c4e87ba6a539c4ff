import { signal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import { useEffect } from 'preact/hooks';
import { carried, guideFile } from '../engine/scripts.ts';
import { chooseFiles } from '../files/choose.ts';
import { jobNames, openFromFolder, readFolder } from '../files/from-folder.ts';
import { forgetDraft, keepAll, openKept, takeKeptShop } from '../files/keeping.ts';
import { keepLeft } from '../files/left.ts';
import { openPiece } from '../files/open.ts';
import { save } from '../files/savers.ts';
import { served } from '../files/served.ts';
import { takeKeptMark } from '../files/shop-mark.ts';
import { type Draft, drafts, onSavedThere } from '../files/store.ts';
import { takeFiles } from '../files/take.ts';
import { drawSmall, Small } from '../picture/small.ts';
import { saying } from '../state/place.ts';

/** A job that the file carries: a starter, or one that it was written with. */
export interface Carried {
  readonly name: string;
  readonly summary: string;
  readonly text: string;
}

const kept = signal<{ readonly drafts: readonly Draft[]; readonly broken: number; readonly failed?: string }>({
  drafts: [],
  broken: 0,
});

const templates = (): readonly Carried[] => (carried('templates') as readonly Carried[] | null) ?? [];
export const given = (): readonly Carried[] => (carried('pieces') as readonly Carried[] | null) ?? [];

async function listKept(): Promise<void> {
  try {
    await keepLeft();
    await keepAll();
    kept.value = await drafts();
  } catch (error) {
    kept.value = { drafts: [], broken: 0, failed: error instanceof Error ? error.message : String(error) };
  }
}

/** Lists what this browser keeps, and draws the starters. */
export async function prepareStart(): Promise<void> {
  await listKept();
  await readFolder();
  await takeKeptShop();
  await takeKeptMark();
  await drawSmall([...given(), ...templates()].map(({ name, text }) => ({ key: name, file: `${name}.yaml`, text })));
}

export function Start(): ComponentChild {
  // Whoever comes back finds what was kept since.
  useEffect(() => void listKept(), []);
  useEffect(() => onSavedThere(() => void listKept()), []);
  const { drafts: everything, broken, failed } = kept.value;
  const all = everything.filter(({ of }) => of === undefined);
  return h('main', { class: 'start' }, [
    h('div', { key: 'files', class: 'files' }, [
      h(
        'p',
        { key: 'words' },
        'Take a mat that is near to yours and change it; or open a job. Files can be dropped anywhere on the page.',
      ),
      h(OpenFiles, { key: 'open' }),
      h(SaveGuide, { key: 'guide' }),
    ]),
    failed === undefined
      ? null
      : h(
          'p',
          { key: 'failed', class: 'error' },
          `This browser keeps nothing for this page (${failed}): save to files.`,
        ),
    broken > 0
      ? h(
          'p',
          { key: 'broken', class: 'error' },
          `${broken} of the pieces kept in this browser cannot be read here; they were left as they are.`,
        )
      : null,
    served() === undefined ? null : h(Folder, { key: 'folder' }),
    given().length > 0 ? h(Cards, { key: 'given', title: 'Pieces in this file', all: given(), fresh: false }) : null,
    all.length > 0
      ? h('section', { key: 'drafts' }, [
          h('h2', { key: 'title' }, 'Kept in this browser'),
          h(
            'ul',
            { key: 'list', class: 'drafts' },
            all.map((draft) => h(Kept, { key: draft.id, draft })),
          ),
        ])
      : null,
    h(Cards, { key: 'templates', title: 'Start from', all: templates(), fresh: true }),
  ]);
}

/** Jobs that lie in the folder that the page was served with. */
function Folder(): ComponentChild {
  return h('section', { class: 'folder' }, [
    h('h2', { key: 'title' }, `In the folder ${served()!.folder}`),
    jobNames.value.length === 0
      ? h('p', { key: 'none', class: 'note' }, 'No job lies there yet; what you save goes there.')
      : null,
    h(
      'ul',
      { key: 'list', class: 'drafts' },
      jobNames.value.map((name) =>
        h(
          'li',
          { key: name },
          h('button', { type: 'button', class: 'plain', onClick: () => void openFromFolder(name) }, name),
        ),
      ),
    ),
    h('button', { key: 'again', type: 'button', onClick: () => void readFolder() }, 'Look again'),
  ]);
}

/** The page may open no other; the guide is saved, and opened from there. */
function SaveGuide(): ComponentChild {
  const go = async (): Promise<void> => {
    saying.value = `The guide was saved ${await save({ file: 'guide.html', blob: await guideFile() })}.`;
  };
  return h('button', { type: 'button', onClick: () => void go() }, 'Save the guide');
}

function OpenFiles(): ComponentChild {
  const choose = (): void => void chooseFiles(() => document.getElementById('files')?.click());
  return h('span', {}, [
    h('button', { key: 'button', type: 'button', class: 'main', onClick: choose }, 'Open files'),
    h('input', {
      key: 'input',
      id: 'files',
      type: 'file',
      multiple: true,
      hidden: true,
      'aria-label': 'Files to open',
      accept: '.yaml,.yml,.json,.jpg,.jpeg,.png,.svg',
      onChange: (event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        const files = [...(input.files ?? [])];
        input.value = '';
        void takeFiles(files);
      },
    }),
  ]);
}

function Kept({ draft }: { readonly draft: Draft }): ComponentChild {
  const drop = async (): Promise<void> => {
    await forgetDraft(draft.id);
    await listKept();
  };
  return h('li', {}, [
    h('button', { key: 'open', type: 'button', class: 'plain', onClick: () => void openKept(draft) }, [
      h('strong', { key: 'title' }, draft.title),
      h('span', { key: 'when' }, ` ${draft.file}, ${new Date(draft.at).toLocaleString()}`),
    ]),
    h(
      'button',
      { key: 'drop', type: 'button', 'aria-label': `Forget ${draft.title}`, onClick: () => void drop() },
      'Forget',
    ),
  ]);
}

function Cards({
  title,
  all,
  fresh,
}: {
  readonly title: string;
  readonly all: readonly Carried[];
  readonly fresh: boolean;
}): ComponentChild {
  return h('section', { class: 'cards' }, [
    h('h2', { key: 'title' }, title),
    h(
      'ul',
      { key: 'list' },
      all.map(({ name, summary, text }) =>
        h(
          'li',
          { key: name },
          h(
            'button',
            { type: 'button', class: 'card', onClick: () => openPiece({ file: fresh ? `${name}.yaml` : name, text }) },
            [h(Small, { key: 'picture', of: name }), h('span', { key: 'words' }, summary)],
          ),
        ),
      ),
    ),
  ]);
}
