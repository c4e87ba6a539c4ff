import type { Stroke } from '../model.ts';
import { facing, MOST_FACINGS, turnBetween, turnsAmong } from '../turning.ts';

export interface Turned {
  readonly stroke: Stroke;
  /** Quarter turns before it, clockwise to the eye. */
  readonly turn: number;
}

/** How a board lies that is laid on with TOP up. */
export const TOP_UP = 0;

/** Strokes of one setting in the order that turns the board least, from how it lies; as they are given where that is as good. */
export function turnedLeast(
  strokes: readonly Stroke[],
  from: number,
): { readonly turned: readonly Turned[]; readonly to: number } {
  const given = turnedAsGiven(strokes, from);
  const facings = [...new Set([from, ...strokes.map(({ direction }) => facing(direction))])];
  if (facings.length > MOST_FACINGS) return given;
  const turns = turnsAmong(facings);
  const all = (1 << facings.length) - 1;
  const tours = facings.flatMap((_, to) => turns.tour(all, 0, to) ?? []);
  const shortest = tours.reduce((best, tour) => (tour.turns < best.turns - 1e-9 ? tour : best));
  if (shortest.turns >= turnsIn(given.turned) - 1e-9) return given;
  return turnedAsGiven(
    shortest.path.flatMap((i) => strokes.filter(({ direction }) => facing(direction) === facings[i])),
    from,
  );
}

const turnsIn = (turned: readonly Turned[]): number => turned.reduce((sum, { turn }) => sum + Math.abs(turn), 0);

export function turnedAsGiven(
  strokes: readonly Stroke[],
  from: number,
): { readonly turned: readonly Turned[]; readonly to: number } {
  let to = from;
  const turned = strokes.map((stroke): Turned => {
    const turn = turnBetween(to, facing(stroke.direction));
    to = facing(stroke.direction);
    return { stroke, turn };
  });
  return { turned, to };
}
