import type { Item } from '../../drawing/model.ts';
import type { Block } from '../../text/block.ts';
import { set } from '../../text/line.ts';
import { LARGE_BOLD } from '../../text/styles.ts';
import { mmFromInches } from '../../units/units.ts';

export interface ScaleFigure extends Block {
  readonly mm: number;
  readonly inches: number;
  /** The corner that the lines leave free, from the figure's top left. */
  readonly inner: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** Lengths of the lines, the longest that fits is drawn. */
const LENGTHS = [
  { mm: 100, inches: 4 },
  { mm: 75, inches: 3 },
  { mm: 50, inches: 2 },
  { mm: 25, inches: 1 },
] as const;

const TICK = 2.6;
/** First line to the figure's edge, line to line, last line to what lies in the corner. */
const [EDGE, PITCH, INSIDE] = [7, 9.5, 5];

/**
 * Lines of exact length to hold a rule against: two level ones, of millimetres and of inches, and two upright ones.
 * Ticks stand at their very ends. Undefined where not even the shortest fits into the given size.
 */
export function scaleFigure(width: number, height: number, pen: string): ScaleFigure | undefined {
  const length = LENGTHS.find(({ mm, inches }) => {
    const across = figureSize(Math.max(mm, mmFromInches(inches)));
    return across <= width && across <= height;
  });
  if (length === undefined) return undefined;
  const { mm, inches } = length;
  const long = Math.max(mm, mmFromInches(inches));
  const first = EDGE + PITCH + INSIDE;
  const items: Item[] = [];
  const level = (y: number, x: number, size: number, text: string, id: string) => {
    items.push(
      { kind: 'line', pen, from: { x, y }, to: { x: x + size, y }, id },
      { kind: 'line', pen, from: { x, y: y - TICK }, to: { x, y: y + TICK } },
      { kind: 'line', pen, from: { x: x + size, y: y - TICK }, to: { x: x + size, y: y + TICK } },
      set(text, x + size / 2, y - 1.4, LARGE_BOLD, 'middle'),
    );
  };
  const upright = (x: number, y: number, size: number, text: string, id: string) => {
    items.push(
      { kind: 'line', pen, from: { x, y }, to: { x, y: y + size }, id },
      { kind: 'line', pen, from: { x: x - TICK, y }, to: { x: x + TICK, y } },
      { kind: 'line', pen, from: { x: x - TICK, y: y + size }, to: { x: x + TICK, y: y + size } },
      set(text, x - 1.4, y + size / 2, LARGE_BOLD, 'middle', 270),
    );
  };
  level(EDGE, first, mm, `${mm} mm across`, `scale-x-${mm}mm`);
  level(EDGE + PITCH, first, mmFromInches(inches), `${inches} in across`, `scale-x-${inches}in`);
  upright(EDGE, first, mm, `${mm} mm down`, `scale-y-${mm}mm`);
  upright(EDGE + PITCH, first, mmFromInches(inches), `${inches} in down`, `scale-y-${inches}in`);
  const size = figureSize(long);
  const inner = { x: first + 1, y: first + 1, width: long - 1, height: long - 1 };
  return { width: size, height: size, items, mm, inches, inner };
}

const figureSize = (long: number): number => EDGE + PITCH + INSIDE + long + 1;
