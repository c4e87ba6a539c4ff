import { type ComponentChild, h } from 'preact';
import type { Piece } from '../engine/answers.ts';
import { edit } from '../state/edit.ts';
import { endRun } from '../state/history.ts';
import { lit, shown } from '../state/shown.ts';
import type { Handle } from './handle.ts';
import { handlesOf } from './handles.ts';

/** Pixels that a finger may tremble before it means to move something. */
const THRESHOLD = 8;
/** A page key moves as many graduations. */
const PAGE = 8;

const stepped = (value: number, step: number): number => Math.max(step, Math.round(value / step) * step);

/** Moves a handle, in steps of the guide's graduation. */
function move(handle: Handle, value: number, step: number, run: string): void {
  const next = stepped(value, step);
  if (Math.abs(next - handle.value) < step / 1000) return;
  edit(handle.edits(next), `${handle.what} ${shown(next)}`, run);
}

/** How far a pointer went on the face, mm, along the handle's axis. */
function dragged(
  event: PointerEvent,
  start: { readonly x: number; readonly y: number },
  svg: SVGSVGElement,
  axis: 'x' | 'y',
): number {
  const matrix = svg.getScreenCTM();
  if (matrix === null) return 0;
  return axis === 'x' ? (event.clientX - start.x) / matrix.a : (event.clientY - start.y) / matrix.d;
}

let drags = 0;

function startDrag(down: PointerEvent, handle: Handle, step: number): void {
  const element = down.currentTarget as SVGElement;
  const svg = element.ownerSVGElement;
  if (svg === null || down.button !== 0) return;
  down.preventDefault();
  element.focus();
  element.setPointerCapture(down.pointerId);
  const start = { x: down.clientX, y: down.clientY };
  const run = `drag ${++drags}`;
  let moving = false;
  const onMove = (event: PointerEvent): void => {
    const far = Math.hypot(event.clientX - start.x, event.clientY - start.y);
    if (!moving && far < THRESHOLD) return;
    moving = true;
    const by = dragged(event, start, svg, handle.axis);
    edit(handle.edits(stepped(handle.value + handle.grows * by, step)), handle.what, run);
  };
  const onUp = (): void => {
    element.removeEventListener('pointermove', onMove);
    element.removeEventListener('pointerup', onUp);
    element.removeEventListener('pointercancel', onUp);
    endRun();
  };
  element.addEventListener('pointermove', onMove);
  element.addEventListener('pointerup', onUp);
  element.addEventListener('pointercancel', onUp);
}

/** Graduations that a key moves a handle by, in the direction in which it is seen to move. */
function keySteps(key: string, { axis }: Handle): number {
  const keys: Readonly<Record<string, number>> =
    axis === 'x'
      ? { ArrowRight: 1, ArrowLeft: -1, PageUp: PAGE, PageDown: -PAGE }
      : { ArrowDown: 1, ArrowUp: -1, PageUp: -PAGE, PageDown: PAGE };
  return keys[key] ?? 0;
}

/** Everything of the face that can be moved, by pointer and by keys. */
export function Grips({ piece, thick }: { readonly piece: Piece; readonly thick: number }): ComponentChild {
  const step = piece.graduation;
  return h(
    'g',
    { class: 'grips' },
    handlesOf(piece).map((handle) => {
      const { id, what, axis, from, to, value, grows, size, beside = 0 } = handle;
      const aside = (beside * thick) / 2;
      const [dx, dy] = axis === 'x' ? [aside, 0] : [0, aside];
      return h(
        'g',
        {
          key: id,
          id: `grip-${id}`,
          class: `grip ${axis}`,
          tabindex: 0,
          role: 'slider',
          'aria-label': what,
          'aria-orientation': axis === 'x' ? 'horizontal' : 'vertical',
          'aria-valuenow': Math.round(value * 100) / 100,
          'aria-valuemin': 0,
          'aria-valuemax': 3000,
          'aria-valuetext': shown(value),
          onPointerDown: (event: PointerEvent) => startDrag(event, handle, step),
          onKeyDown: (event: KeyboardEvent) => {
            const by = keySteps(event.key, handle);
            if (by === 0) return;
            event.preventDefault();
            move(handle, value + Math.sign(grows) * by * step, step, `keys ${id}`);
          },
          onFocus: () => {
            lit.value = [size];
          },
          onBlur: () => {
            lit.value = [];
            endRun();
          },
        },
        [
          h('line', {
            key: 'hit',
            class: 'hit',
            x1: from.x + dx,
            y1: from.y + dy,
            x2: to.x + dx,
            y2: to.y + dy,
            'stroke-width': thick,
          }),
          h('line', { key: 'seen', class: 'seen', x1: from.x, y1: from.y, x2: to.x, y2: to.y }),
        ],
      );
    }),
  );
}
