import { effect, signal, untracked } from '@preact/signals';
import { defined } from '../../problems/defined.ts';
import type { View } from '../engine/answers.ts';
import { look as ask } from '../engine/engines.ts';
import { mistake } from './mistake.ts';
import { look, open, piece, text } from './piece.ts';

/** What the picture is to show. */
export const view = signal<View>('face');
/** When the last question was asked and the last answer came, for whoever measures. */
const counted = signal({ asked: 0, answered: 0 });

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
  const request = {
    text: text.value,
    file: now.file,
    view: view.value,
    pictures: Object.keys(now.pictures),
    ...defined({ shop: now.shop }),
  };
  counted.value = { ...counted.value, asked: counted.value.asked + 1 };
  try {
    const found = await ask(request);
    if (open.value?.id === now.id) {
      look.value = found;
      if (found.piece !== undefined) piece.value = found.piece;
    }
  } catch (error) {
    look.value = { problems: [mistake(error)] };
  } finally {
    asking = false;
    counted.value = { ...counted.value, answered: counted.value.answered + 1 };
  }
  if (again) {
    again = false;
    await askNow();
  }
}

/** From now on the picture follows the text. */
export function follow(): void {
  effect(() => {
    const { asked, answered } = counted.value;
    // For whoever waits for the picture.
    document.documentElement.dataset.asking = asked === answered ? 'no' : 'yes';
  });
  effect(() => {
    // Whatever of these changes asks anew.
    void [text.value, open.value, view.value];
    untracked(() => void askNow());
  });
}
