import { bottom, right } from '../../geometry/box.ts';
import { type BySide, SIDES, type Side } from '../../geometry/sides.ts';
import type { Job } from '../../job/job.ts';
import { fallsShort } from '../../job/rule-of-thumb.ts';
import { error, type Problem, warning } from '../../problems/problem.ts';
import { showLength } from '../../units/print.ts';
import { theLayer } from '../layers.ts';
import type { MatLayer } from '../model.ts';
import type { PlacedOpening } from '../placed.ts';
import { pathOf, whereOn } from '../sides.ts';

/**
 * How much board must stay beside a cut, at the narrower of face and back: what is narrower tears or bends, whatever cuts
 * it. Common practice, no source. A job may ask for more between its openings, never for less.
 */
export const leastStay = (thickness: number): number => Math.max(2, thickness);
/** Narrower than this it holds, but is easily bent. */
export const soundStay = (thickness: number): number => Math.max(6, 2 * thickness);
/** A length that misses a bound by less meets it. */
const MISSED = 1e-6;

/** What stays between the edge of a layer's own board and an opening. */
function bordersIn(layer: MatLayer, own: PlacedOpening['layers'][number]): BySide<number> {
  const board = layer.blankBox;
  const edges = [own.faceBox, own.backBox];
  return {
    left: Math.min(...edges.map(({ x }) => x)) - board.x,
    top: Math.min(...edges.map(({ y }) => y)) - board.y,
    right: right(board) - Math.max(...edges.map(right)),
    bottom: bottom(board) - Math.max(...edges.map(bottom)),
  };
}

interface Narrow {
  readonly layer: number;
  readonly length: number;
  readonly side: Side;
}

/** Of each side the layer that is nearest to its bound, or furthest below it. */
function narrowest(layers: readonly MatLayer[], opening: PlacedOpening, bound: (thickness: number) => number) {
  return SIDES.flatMap((side): Narrow[] => {
    const found = layers.map((each, layer) => {
      const length = bordersIn(each, opening.layers[layer]!)[side];
      return { layer, side, length, short: bound(each.board.thickness) - length };
    });
    const worst = found.reduce((most, each) => (each.short > most.short + MISSED ? each : most));
    return worst.short > MISSED ? [worst] : [];
  });
}

/** Borders that are too narrow to hold, and cuts that leave their board. */
export function borderStays(job: Job, layers: readonly MatLayer[], openings: readonly PlacedOpening[]): Problem[] {
  return openings.flatMap((opening, index) => {
    // Of one opening a border of the whole mat that comes to nothing is told by itself (`board.ts`).
    const isTold = (side: Side): boolean => openings.length === 1 && opening.layers[0]!.border[side] <= 0;
    const torn = narrowest(layers, opening, leastStay).filter(({ side }) => !isTold(side));
    if (torn.length > 0) return told(job, layers, opening, index, torn, error);
    const thin = narrowest(layers, opening, soundStay).filter(({ layer, length }) =>
      fallsShort(length, soundStay(layers[layer]!.board.thickness)),
    );
    return told(job, layers, opening, index, thin, warning);
  });
}

function told(
  job: Job,
  layers: readonly MatLayer[],
  opening: PlacedOpening,
  index: number,
  found: readonly Narrow[],
  make: typeof error,
): Problem[] {
  const show = (mm: number): string => showLength(mm, job.units);
  const groups = new Map<string, Narrow[]>();
  for (const each of found) {
    const key = `${each.layer} ${show(each.length)}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].map((alike) => {
    const { layer, length } = alike[0]!;
    const { thickness } = layers[layer]!.board;
    const sides = alike.map(({ side }) => side);
    const place = `${opening.name} ${length <= 0 ? 'runs off' : `leaves ${show(length)} of`} ${theLayer(layer)} ${whereOn(sides)}`;
    const torn = make === error;
    const need = torn
      ? `${show(leastStay(thickness))} is the least: a narrower border tears`
      : `below ${show(soundStay(thickness))} a border bends easily`;
    const hint = 'make the mat larger or the opening smaller';
    return make(torn ? 'border-tears' : 'border-narrow', where(job, index, layer, sides), `${place}, ${need}`, hint);
  });
}

/** Where the border was stated, or what was cut, or else the opening. */
function where(job: Job, index: number, layer: number, sides: readonly Side[]): Problem['path'] {
  const { asCut } = job;
  if (asCut !== undefined) {
    const at = asCut.openings.findLastIndex((each) => each.opening === index && each.layer <= layer);
    if (asCut.blanks[layer] !== undefined) return ['asCut', 'layers', layer, 'blank'];
    return at >= 0 ? ['asCut', 'openings', at, 'size'] : ['asCut'];
  }
  const { place } = job.openings[index]!;
  if (place !== undefined) return ['openings', index, 'place'];
  return pathOf(job.mat.border, sides, ['mat', 'border'], job.openings.length === 1 ? ['mat'] : ['openings', index]);
}
