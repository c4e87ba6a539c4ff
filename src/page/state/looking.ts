import { batch, effect, signal, untracked } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import type { Look, LookRequest, View } from '../engine/answers.ts';
import { look as ask, press, rest, shopProblems } from '../engine/engines.ts';
import { calibration } from './calibration.ts';
import { mistake } from './mistake.ts';
import { look, type Open, open, piece, text } from './piece.ts';
import { today } from './today.ts';

/** What the picture is to show. */
export const view = signal<View>('face');
/** What is waited for; `rest`: the picture is there already. */
const waiting = signal<'yes' | 'rest' | 'no'>('no');

let asking = false;
let again = false;

/** One question at a time: while it is answered only the latest of those that came meanwhile is kept. */
async function askNow(): Promise<void> {
  if (asking) {
    again = true;
    return;
  }
  const now = open.value;
  if (now === undefined) return;
  asking = true;
  waiting.value = 'yes';
  const shop = defined({ shop: now.shop });
  const request: LookRequest = {
    text: text.value,
    file: now.file,
    view: view.value,
    pictures: Object.keys(now.pictures),
    ...shop,
  };
  try {
    if (now.of === undefined) {
      const found = await ask(request);
      if (open.value?.id === now.id) {
        await show(found, request);
      }
    } else await lookAtOther(now, request);
  } catch (error) {
    look.value = { problems: [mistake(error)] };
  } finally {
    asking = false;
  }
  if (again) {
    again = false;
    await askNow();
  } else waiting.value = 'no';
}

/** The shop's file is read; readings are worked out. */
async function lookAtOther({ id, of, calibrating }: Open, { text: words, file, shop }: LookRequest): Promise<void> {
  if (of === 'readings' && calibrating !== undefined) {
    const told = await press.ask('calibrating', {
      kind: calibrating,
      text: words,
      file,
      date: today(),
      ...defined({ shop }),
    });
    if (open.value?.id !== id) return;
    calibration.value = told;
    look.value = { problems: told.problems };
    return;
  }
  const found = await shopProblems({ text: words, file });
  if (open.value?.id === id) look.value = found;
}

/**
 * The picture first. Reasons and problems that come later are those of the last piece until they are there, and keys go
 * before them.
 */
async function show(found: Look, request: LookRequest): Promise<void> {
  const [before, wrong] = [piece.value, look.value];
  if (found.piece?.later !== true) {
    batch(() => {
      look.value = found;
      if (found.piece !== undefined) piece.value = found.piece;
    });
    return;
  }
  const shown = { ...found.piece, why: before?.why ?? [] };
  const meanwhile: Look = { ...found, problems: wrong?.piece === undefined ? found.problems : wrong.problems };
  batch(() => {
    look.value = meanwhile;
    piece.value = shown;
  });
  if (again) return;
  waiting.value = 'rest';
  const { problems, why } = await rest(request);
  if (piece.value !== shown || look.value !== meanwhile) return;
  batch(() => {
    look.value = why === undefined ? { problems } : { ...found, problems };
    piece.value = why === undefined ? before : { ...found.piece!, why };
  });
}

/** From now on the picture follows the text. */
export function follow(): void {
  effect(() => {
    // For whoever waits for the picture.
    document.documentElement.dataset.asking = waiting.value;
  });
  effect(() => {
    // Whatever of these changes asks anew.
    void [text.value, open.value, view.value];
    untracked(() => void askNow());
  });
}
