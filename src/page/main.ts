/** The page: everything is put up once, and follows from its signals. */
import { h, render } from 'preact';
import { bytesOfBase64 } from '../fonts/base64.ts';
import type { Source } from '../outputs/solve-job.ts';
import { carried } from './engine/scripts.ts';
import { followShop } from './files/desk.ts';
import { takeDrops } from './files/drop.ts';
import { keepChanges } from './files/keeping.ts';
import { openPiece, shop } from './files/open.ts';
import { takeMark } from './files/shop-mark.ts';
import { learnShapes } from './form/shape.ts';
import { redo, undo } from './state/history.ts';
import { follow } from './state/looking.ts';
import { worksHere } from './state/works-here.ts';
import { Page } from './views/page.ts';
import { given, prepareStart } from './views/start.ts';

/** Undo and redo by the keys of every program where the buttons for them are; elsewhere a text has its own, and the piece is not seen. */
function keys(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || !worksHere()) return;
  event.preventDefault();
  if (event.shiftKey) redo();
  else undo();
}

/** A file as text, since a page is text. */
interface CarriedMark {
  readonly name: string;
  readonly base64: string;
}

function start(): void {
  const own = (carried('shop') as (Source & { readonly mark?: CarriedMark }) | null) ?? undefined;
  if (own !== undefined) {
    const { mark, ...source } = own;
    shop.value = source;
    if (mark !== undefined) void takeMark(new Blob([new Uint8Array(bytesOfBase64(mark.base64))]), mark.name);
  }
  const [only, ...others] = given();
  if (only !== undefined && others.length === 0) openPiece({ file: only.name, text: only.text });
  follow();
  followShop();
  keepChanges();
  takeDrops();
  addEventListener('keydown', keys);
  render(h(Page, {}), document.getElementById('page')!);
  learnShapes().catch(() => undefined);
  void prepareStart();
}

start();
