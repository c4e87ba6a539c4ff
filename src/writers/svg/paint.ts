import { penOf } from '../../drawing/bounds.ts';
import type { PathItem, Pen } from '../../drawing/model.ts';
import { hexColour } from '../colour.ts';

export type Attributes = Readonly<Record<string, string>>;

/** What a path is filled and drawn with; `number` writes lengths. */
export function paintOf(
  { pen, fill, rule }: Pick<PathItem, 'pen' | 'fill' | 'rule'>,
  pens: Readonly<Record<string, Pen>>,
  number: (mm: number) => string,
): Attributes {
  const filled = fill === undefined ? { fill: 'none' } : { fill: hexColour(fill), 'fill-rule': rule ?? 'evenodd' };
  return { ...filled, ...(pen === undefined ? {} : strokeOf(penOf(pen, pens), number)) };
}

export function strokeOf({ width, colour, dash, cap }: Pen, number: (mm: number) => string): Attributes {
  return {
    stroke: hexColour(colour),
    'stroke-width': number(width),
    'stroke-linecap': cap,
    // A butt pen has sharp corners, up to the same limit as in other formats.
    ...(cap === 'round' ? { 'stroke-linejoin': 'round' } : { 'stroke-miterlimit': '10' }),
    ...(dash.length === 0 ? {} : { 'stroke-dasharray': dash.map(number).join(' ') }),
  };
}
