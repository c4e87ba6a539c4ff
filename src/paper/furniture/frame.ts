import { type Frame, wholeFrame } from '../../drawing/document.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import type { Size } from '../../geometry/point.ts';

/** What a page itself needs, as a drawing as large as the page; nothing where there is nothing to draw. */
export function furnitureFrames(
  name: 'under' | 'over',
  paper: Size,
  items: readonly Item[],
  pens: Drawing['pens'],
): readonly Frame[] {
  if (items.length === 0) return [];
  const group = { name, label: LABELS[name], shown: true, items };
  return [wholeFrame({ title: LABELS[name], ...paper, view: 'sheet', pens, groups: [group] })];
}

const LABELS = { under: 'Under the drawing', over: 'Over the drawing' } as const;
