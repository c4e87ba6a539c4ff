import { signal } from '@preact/signals';
import { type ComponentChild, h } from 'preact';
import type { Piece } from '../engine/answers.ts';
import { piece } from '../state/piece.ts';
import { shown } from '../state/shown.ts';

interface Edge {
  readonly id: string;
  readonly what: string;
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

export const measuring = signal(false);
/** The edges that were chosen, two at most, by their ids: where they lie is the piece's, as it is now. */
const picked = signal<readonly string[]>([]);

export function toggleMeasure(): void {
  measuring.value = !measuring.value;
  picked.value = [];
}

function edgesOf({ report }: Piece): readonly Edge[] {
  const box = (id: string, what: string, x: number, y: number, width: number, height: number): readonly Edge[] => [
    { id: `${id}-left`, what: `left edge of ${what}`, axis: 'x', at: x, from: y, to: y + height },
    { id: `${id}-right`, what: `right edge of ${what}`, axis: 'x', at: x + width, from: y, to: y + height },
    { id: `${id}-top`, what: `top edge of ${what}`, axis: 'y', at: y, from: x, to: x + width },
    { id: `${id}-bottom`, what: `bottom edge of ${what}`, axis: 'y', at: y + height, from: x, to: x + width },
  ];
  const { outer, openings, layers } = report;
  return [
    ...box('mat', 'the mat', 0, 0, outer.width, outer.height),
    ...openings.flatMap(({ opening, name, layers: cuts }) =>
      cuts.flatMap(({ face }, i) =>
        box(
          `opening-${opening}-${i}`,
          cuts.length > 1 ? `${name}, ${layers[i]?.name ?? ''}` : name,
          face.x,
          face.y,
          face.width,
          face.height,
        ),
      ),
    ),
  ];
}

/** Two parallel edges and how far they are apart. */
export function measured(): string {
  const all = piece.value === undefined ? [] : edgesOf(piece.value);
  const [a, b] = picked.value.flatMap((id) => all.find((edge) => edge.id === id) ?? []);
  if (a === undefined) return 'Choose an edge, then another.';
  if (b === undefined) return `From the ${a.what}: choose another edge.`;
  if (a.axis !== b.axis) return `The ${a.what} and the ${b.what} run across one another: choose two that are parallel.`;
  return `${shown(Math.abs(a.at - b.at))} from the ${a.what} to the ${b.what}.`;
}

const pick = (id: string): void => {
  const now = picked.value;
  picked.value = now.length === 1 && now[0] !== id ? [now[0]!, id] : [id];
};

export function Edges({ piece: shownPiece, thick }: { readonly piece: Piece; readonly thick: number }): ComponentChild {
  return h(
    'g',
    { class: 'edges' },
    edgesOf(shownPiece).map(({ id, what, axis, at, from, to }) => {
      const line = axis === 'x' ? { x1: at, x2: at, y1: from, y2: to } : { y1: at, y2: at, x1: from, x2: to };
      const on = picked.value.includes(id);
      return h(
        'g',
        {
          key: id,
          class: on ? 'edge on' : 'edge',
          tabindex: 0,
          role: 'button',
          'aria-label': what,
          'aria-pressed': on,
          onClick: () => pick(id),
          onKeyDown: (event: KeyboardEvent) => {
            if (event.key !== 'Enter' && event.key !== ' ') return;
            event.preventDefault();
            pick(id);
          },
        },
        [
          h('line', { key: 'hit', class: 'hit', ...line, 'stroke-width': thick }),
          h('line', { key: 'seen', class: 'seen', ...line }),
        ],
      );
    }),
  );
}
