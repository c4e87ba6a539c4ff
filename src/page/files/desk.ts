import { batch, effect, signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import type { Calibrated } from '../../shop/readings/readings.ts';
import { change, EMPTY, history } from '../state/history.ts';
import { look, open, piece, text } from '../state/piece.ts';
import { place } from '../state/place.ts';
import { forgetDraft, keepAll, know } from './keeping.ts';
import { keepShop, SHOP, takenOver, takenWords } from './kept-shop.ts';
import { type Opening, openPiece, put, shop } from './open.ts';
import { type Draft, draftOf } from './store.ts';

/** The piece that was open when the shop was opened: it comes back as it was. */
const aside = signal<(Opening & { readonly pieceWas: typeof piece.value }) | undefined>(undefined);

const NEW_SHOP = '# The shop: what it has, and what was measured of it.\n';

/** Whether there is a piece to describe, be it laid aside. */
export const hasPiece = (): boolean =>
  (open.value !== undefined && open.value.of === undefined) || aside.value !== undefined;

function layAside(): void {
  const now = open.value;
  if (now === undefined || now.of !== undefined) return;
  const { id, file, pictures } = now;
  aside.value = { id, file, pictures, text: text.value, history: history.value, pieceWas: piece.value };
}

/** The shop's file on the desk, with its own history. */
export async function openShop(): Promise<void> {
  const draft = await lastDraft(SHOP);
  layAside();
  const now = shop.value;
  const same = draft !== undefined && (now === undefined || now.text === draft.text);
  const file = now?.file ?? 'shop.yaml';
  put(
    same
      ? { id: SHOP, of: 'shop', file: draft.file, text: draft.text, history: draft.history }
      : { id: SHOP, of: 'shop', file, text: now?.text ?? NEW_SHOP, history: takenOver(draft, file) },
    'shop',
  );
}

/** As it was left a moment ago, and what else is open is kept. */
async function lastDraft(id: string): Promise<Draft | undefined> {
  await keepAll();
  const draft = await draftOf(id).catch(() => undefined);
  if (draft !== undefined) know(draft);
  return draft;
}

/** A shop's file that was chosen or dropped: on the desk it is a change as any other, else pieces have it from now on. */
export async function takeShop(taken: Source): Promise<void> {
  if (open.value?.of === 'shop') {
    change(taken.text, takenWords(taken.file));
    return;
  }
  shop.value = taken;
  const now = open.value;
  if (now !== undefined) open.value = { ...now, shop: taken };
  await keepShop(taken);
}

/** Readings of one tool, begun as they were left. */
export async function openReadings(kind: Calibrated, begun: string): Promise<void> {
  const id = `readings ${kind}`;
  const draft = await lastDraft(id);
  layAside();
  const own = { id, of: 'readings' as const, calibrating: kind, file: `${kind}.yaml` };
  put(draft === undefined ? { ...own, text: begun } : { ...own, text: draft.text, history: draft.history }, 'shop');
}

/** The piece again, if there is one, with the shop as it is now. */
export function backToPiece(next: 'pieces' | 'describe' | 'out'): void {
  if (open.value?.of === undefined) {
    place.value = next;
    return;
  }
  const was = aside.value;
  batch(() => {
    aside.value = undefined;
    if (was === undefined) {
      open.value = undefined;
      look.value = undefined;
      piece.value = undefined;
      history.value = EMPTY;
      place.value = 'pieces';
      return;
    }
    openPiece({ ...was, shop: shop.value });
    piece.value = was.pieceWas;
    place.value = next;
  });
}

/** From now on the shop that pieces have is the one on the desk; what this browser keeps of it is there at the start. */
export function followShop(): void {
  effect(() => {
    const now = open.value;
    if (now?.of === 'shop') shop.value = { file: now.file, text: text.value };
  });
}

/** Readings that were accepted are the shop's now. */
export const discardReadings = (kind: Calibrated): Promise<void> =>
  forgetDraft(`readings ${kind}`).catch(() => undefined);
