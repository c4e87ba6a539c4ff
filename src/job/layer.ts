import * as z from 'zod/mini';
import { type BySide, namesNoSide } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import { error, type Problem, warning } from '../problems/problem.ts';
import { check, converted, described, id, record, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import { BEVEL_EXPECTED, bevelAngle } from '../shop/bevel-angle.ts';
import { BOARD, BOARD_COLOUR, BOARD_CORE, BOARD_EXPECTED, type Board, boardInPlace } from '../shop/board.ts';
import type { Head } from '../shop/head.ts';
import type { Shop } from '../shop/shop.ts';
import { either } from '../shop/units.ts';
import type { LengthUnit, Units } from '../units/units.ts';
import type { BenchRequest } from './bench.ts';
import { withLeast } from './reveals.ts';

export interface LayerRequest {
  readonly board: Board;
  readonly bevel: Bevel;
  /** Face edge of the layer above to the face edge of this one; undefined on the top mat, or where it is derived. */
  readonly reveal?: number;
  /** Reveals that differ by side; then `reveal` is undefined. */
  readonly reveals?: BySide<number>;
  /** Lifts this layer off the one above. */
  readonly spacer?: number;
  /** Taken off each edge of an under mat. */
  readonly trimBack: number;
}

/** Degrees between the bevel and the face of the board, 90 being square. `reverse`: the face opening is the smaller. */
export interface Bevel {
  readonly angle: number;
  readonly reverse: boolean;
}

const MOST_LAYERS = 8;

export function layersSchema(unit: LengthUnit) {
  const layers = z.array(layerSchema(unit), 'a list of layers, the top mat first').check(
    check<readonly unknown[]>(({ length }) => {
      if (length >= 1 && length <= MOST_LAYERS) return undefined;
      const message = length === 0 ? 'the list of layers is empty' : `there are ${length} layers`;
      const hint = `give 1 to ${MOST_LAYERS}, or leave the key out for one top mat`;
      return { code: 'layers-count', message, hint };
    }),
  );
  return described(
    layers,
    'Top mat first; one 4-ply mat where it is left out',
    [[{ board: 'bone-4' }, { board: 'slate-4', reveal: '1/4' }]],
    { minItems: 1, maxItems: MOST_LAYERS },
  );
}

function layerSchema(unit: LengthUnit) {
  const { length, writtenSides } = lengthFields(unit);
  const board = z.union([id('A board of the shop'), boardInPlace(unit)], BOARD_EXPECTED);
  const boards = ['bone-4', { thickness: '1.4 mm', colour: '#efe9dc', name: 'Bone' }];
  const reveal = 'Face edge of the layer above to the face edge of this one';
  const layer = record(
    {
      board: z.optional(
        described(board, 'What the layer is made of: a board of the shop, or one described in place', boards),
      ),
      bevel: z.optional(bevelSchema()),
      reveal: z.optional(
        writtenSides(reveal, ['1/4', { top: '1/4', sides: '1/4', bottom: '1/2' }], { least: 0.1, most: 500 }),
      ),
      spacer: z.optional(length('Lifts this layer off the one above', ['3 mm'], { least: 0.5, most: 50 })),
      trimBack: z.optional(length('Taken off each edge of an under mat', ['1/8'], { least: 0, most: 100 })),
    },
    'a map: board, bevel, reveal, spacer, trimBack',
  );
  return described(layer, 'A layer of the mat', [{ board: 'slate-4', reveal: '1/4' }]);
}

export interface BevelInput {
  readonly angle?: number | undefined;
  readonly reverse?: boolean | undefined;
}

function bevelSchema() {
  const expected = `${BEVEL_EXPECTED}, or {angle, reverse}`;
  const plain = converted(bevelAngle(), (angle): BevelInput => ({ angle }));
  const shape = {
    angle: z.optional(bevelAngle()),
    reverse: z.optional(yesNo('True where it slopes the other way: the core is hidden')),
  };
  const map = z.pipe(
    record(shape, expected),
    z.transform((given): BevelInput => given),
  );
  return described(z.union([plain, map], expected), 'The angle of the bevel; that of the head where it is left out', [
    45,
    90,
    { angle: 45, reverse: true },
  ]);
}

/** Kept short of every edge that touches guide or square (common practice, no source). */
export const usualTrimBack = (units: Units, index: number, stack: 'together' | 'apart'): number =>
  index > 0 && stack === 'together' ? either(units, 1 / 8, 3) : 0;

type LayerInput = z.output<ReturnType<typeof layersSchema>>[number];

/** The layers of the mat; one top mat where the job names none. */
export function layersFrom(
  given: readonly LayerInput[] | undefined,
  bench: BenchRequest,
  headNamed: boolean,
  shop: Shop,
  units: Units,
  problems: Problem[],
): readonly LayerRequest[] {
  return (given ?? [{}]).map((layer, index) => {
    const path = ['mat', 'layers', index];
    const bevel = bevelFrom(layer.bevel, bench.head);
    if (headNamed) problems.push(...bevelProblems(bevel, bench.head, [...path, 'bevel']));
    if (index === 0 && layer.reveal !== undefined) {
      const message = 'the top mat has no layer above it that it could be revealed from';
      const hint = 'give the reveal to the layer below it';
      problems.push(error('reveal-top', [...path, 'reveal'], message, hint));
    }
    return {
      board: boardFrom(layer.board, index, shop, [...path, 'board'], problems),
      bevel,
      trimBack: layer.trimBack ?? usualTrimBack(units, index, bench.stack),
      ...revealFrom(layer.reveal),
      ...defined({ spacer: layer.spacer }),
    };
  });
}

function revealFrom(given: LayerInput['reveal']): Pick<LayerRequest, 'reveal' | 'reveals'> {
  if (given === undefined || namesNoSide(given)) return {};
  return given.written === 'once' && given.top !== undefined ? { reveal: given.top } : { reveals: withLeast(given) };
}

function bevelFrom(given: LayerInput['bevel'], head: Head): Bevel {
  return { angle: given?.angle ?? head.bevel, reverse: given?.reverse ?? false };
}

function bevelProblems(bevel: Bevel, head: Head, path: Problem['path']): readonly Problem[] {
  if (bevel.angle === head.bevel) return [];
  const message = `the layer has a bevel of ${bevel.angle}°, the head ${head.id} cuts ${head.bevel}°`;
  const hint = `the pattern is drawn for ${bevel.angle}°: cut it with a head of that angle`;
  return [warning('bevel-not-head', path, message, hint)];
}

function boardFrom(
  given: LayerInput['board'],
  index: number,
  shop: Shop,
  path: Problem['path'],
  problems: Problem[],
): Board {
  if (given === undefined) return BOARD;
  if (typeof given === 'string') return lookUp('board', given, shop.boards, path, problems) ?? BOARD;
  const name = given.name ?? `board ${index + 1}`;
  return {
    id: name,
    name,
    thickness: given.thickness,
    colour: given.colour ?? BOARD_COLOUR,
    core: given.core ?? BOARD_CORE,
    sheets: [],
    directional: false,
    ...defined({ plies: given.plies }),
  };
}
