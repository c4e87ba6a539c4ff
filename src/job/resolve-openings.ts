import { SIDES, type SomeSides } from '../geometry/sides.ts';
import { defined } from '../read/fields/defined.ts';
import type { Fields } from '../shapes/shape.ts';
import * as defaults from '../shop/defaults.ts';
import type { Units } from '../units/units.ts';
import type { ArrangeRequest, DecorRequest, OpeningStep, PlaceRequest } from './arrange.ts';
import type { JobInput } from './job-schema.ts';
import type { OpeningRequest } from './opening.ts';
import { FIELD_NAMES } from './opening-schema.ts';

type OpeningInput = JobInput['openings'][number];

export function openingFrom(given: OpeningInput, units: Units, bevel: number): OpeningRequest {
  const fields = fieldsFrom(given);
  return {
    shape: given.shape ?? (fields?.outline === undefined ? defaults.SHAPE : 'outline'),
    overlap: given.overlap ?? {},
    measure: given.measure ?? defaults.measure(given.float !== undefined),
    ...defined({
      name: given.name,
      fields,
      artwork: given.artwork,
      float: given.float,
      size: given.size,
      place: placeFrom(given.place),
      steps: given.reveals?.map(stepFrom),
      decor: given.lines?.map((line) => decorFrom(line, units, bevel)),
      picture: given.picture,
    }),
  };
}

function fieldsFrom(given: OpeningInput): Fields | undefined {
  const values = given as Readonly<Record<string, Fields[string] | undefined>>;
  const found = Object.fromEntries(
    FIELD_NAMES.flatMap((name) => {
      const value = values[name];
      return value === undefined ? [] : [[name, value]];
    }),
  );
  return Object.keys(found).length === 0 ? undefined : found;
}

export function placeFrom(given: OpeningInput['place']): PlaceRequest | undefined {
  if (given === undefined) return undefined;
  const { below, gap, left, right, top, bottom } = given;
  if (below !== undefined) return { below: { opening: below, gap: gap ?? 0 } };
  return defined({ left, right, top, bottom });
}

/** An empty map says as little as a key that is left out. */
export const namesNoSide = (given: SomeSides): boolean => SIDES.every((side) => given[side] === undefined);

/** Sides that are left out have the least of the reveals that are given, of which there must be one. */
export function allSides(given: SomeSides): Readonly<Record<(typeof SIDES)[number], number>> {
  const least = Math.min(...SIDES.flatMap((side) => given[side] ?? []));
  const of = (side: (typeof SIDES)[number]): number => given[side] ?? least;
  return { top: of('top'), right: of('right'), bottom: of('bottom'), left: of('left') };
}

const stepFrom = (given: NonNullable<OpeningInput['reveals']>[number]): OpeningStep =>
  typeof given === 'string' ? given : namesNoSide(given) ? 'same' : allSides(given);

function decorFrom(given: NonNullable<OpeningInput['lines']>[number], units: Units, bevel: number): DecorRequest {
  const kind = given.kind ?? 'groove';
  return {
    kind,
    distance: given.distance,
    width: given.width ?? defaults.lineWidth(units, kind),
    // The head that cuts the bevels cuts the grooves; one that stands upright cannot.
    angle: bevel < 90 ? bevel : defaults.BEVEL,
    ...defined({ sides: given.sides }),
  };
}

/** `free` is the number of openings that have no place of their own. */
export function arrangeFrom(given: JobInput['arrange'], free: number): ArrangeRequest | undefined {
  if (given === undefined) return undefined;
  const { rows, columns, gap, align, fill, rowWeighting } = given;
  const { add, ratio } = rowWeighting ?? {};
  return {
    rows: rowsFrom(rows, columns, free),
    columns: !Array.isArray(rows) && (columns ?? 1) > 1,
    align: align ?? 'centre',
    fill: fill ?? false,
    ...defined({
      across: gap?.across,
      down: gap?.down,
      rowWeighting: add !== undefined ? { add } : ratio !== undefined ? { ratio } : undefined,
    }),
  };
}

function rowsFrom(
  rows: number | readonly number[] | undefined,
  columns: number | undefined,
  free: number,
): readonly number[] {
  if (typeof rows === 'object') return rows;
  if (rows !== undefined && columns !== undefined) return Array.from({ length: rows }, () => columns);
  const each = columns ?? Math.max(1, Math.ceil(free / (rows ?? 1)));
  const full = Array.from({ length: Math.floor(free / each) }, () => each);
  return free % each === 0 ? full : [...full, free % each];
}
