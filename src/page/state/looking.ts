import { effect, signal, untracked } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import type { LookRequest, Piece, View } from '../engine/answers.ts';
import { look as ask, press, shopProblems, why } from '../engine/engines.ts';
import { calibration } from './calibration.ts';
import { mistake } from './mistake.ts';
import { look, type Open, open, piece, text } from './piece.ts';
import { today } from './today.ts';

/** What the picture is to show. */
export const view = signal<View>('face');
/** What is waited for; `reasons`: the picture is there already. */
const waiting = signal<'yes' | 'reasons' | 'no'>('no');

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
        look.value = found;
        if (found.piece !== undefined) await show(found.piece, request);
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

/** The picture first. Reasons that come later are those of the last piece until they are there, and keys go before them. */
async function show(found: Piece, request: LookRequest): Promise<void> {
  if (found.whyLater !== true) {
    piece.value = found;
    return;
  }
  const shown: Piece = { ...found, why: piece.value?.why ?? [] };
  piece.value = shown;
  if (again) return;
  waiting.value = 'reasons';
  const reasons = await why(request);
  if (piece.value === shown) piece.value = { ...found, why: reasons };
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
