import type { Drawing, Pen } from '../../drawing/model.ts';
import type { MapPlan } from '../furniture/assembly-map.ts';
import { furnitureFrames } from '../furniture/frame.ts';
import { CHECK_PENS, SHEET_PENS } from '../furniture/pens.ts';
import type { LaidPage } from '../model.ts';
import { CHECK_FIRST, checkContent } from './content.ts';
import { type CheckFacts, drawingPen } from './words.ts';

/**
 * The first sheet, and as many more as its words take. All of it is corrected for the printer as the sheets of the
 * pattern are, so that it tests what they will be.
 */
export function checkPages(facts: CheckFacts, map: MapPlan): readonly LaidPage[] {
  const { sheet, work } = facts;
  const pens = { ...SHEET_PENS, ...CHECK_PENS, ...legendPens(work.drawing) };
  return checkContent(facts, map, sheet.area, CHECK_FIRST).map(
    (items, i): LaidPage => ({
      name: i === 0 ? 'check' : `check ${i + 1}`,
      label: i === 0 ? 'check' : `check ${i + 1}`,
      outline: [CHECK_FIRST.title],
      paper: sheet.paper,
      rotation: 0,
      scale: sheet.scale,
      frames: furnitureFrames('under', sheet.paper, items, pens),
    }),
  );
}

/** The pens of a drawing under the names that the list of lines calls them by. */
export function legendPens({ pens }: Drawing): Readonly<Record<string, Pen>> {
  return Object.fromEntries(Object.entries(pens).map(([name, pen]) => [drawingPen(name), pen]));
}
