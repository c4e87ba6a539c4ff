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
  if (now === undefined) {
    waiting.value = 'no';
    return;
  }
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
        show(found, request);
      }
    } else await lookAtOther(now, request);
  } catch (error) {
    if (open.value?.id === now.id) look.value = { problems: [mistake(error)] };
  } finally {
    asking = false;
  }
  if (again) {
    again = false;
    await askNow();
  } else waiting.value = isBehind() ? 'rest' : 'no';
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
    calibration.value = { told, text: words, shop };
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
function show(found: Look, request: LookRequest): void {
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
  askBehind(async () => {
    const asked = (): boolean => piece.value === shown && look.value === meanwhile;
    if (!asked()) return;
    const { problems, why } = await rest(request);
    if (!asked()) return;
    batch(() => {
      look.value = why === undefined ? { problems } : { ...found, problems };
      piece.value = why === undefined ? before : { ...found.piece!, why };
    });
  });
}

/** ms without a key, before what comes behind the picture is asked for. */
const PAUSE = 150;
let timer: ReturnType<typeof setTimeout> | undefined;
let next: (() => Promise<void>) | undefined;
let running = false;

const isBehind = (): boolean => running || next !== undefined;

/** One question at a time, and of those that wait the latest alone. */
function askBehind(question: () => Promise<void>): void {
  next = question;
  clearTimeout(timer);
  timer = setTimeout(() => void answerBehind(), PAUSE);
}

async function answerBehind(): Promise<void> {
  if (running || next === undefined) return;
  const question = next;
  next = undefined;
  running = true;
  try {
    await question();
  } catch (error) {
    look.value = { ...look.value, problems: [mistake(error)] };
  } finally {
    running = false;
  }
  if (next !== undefined) await answerBehind();
  else if (!asking) waiting.value = 'no';
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
