import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { colour, described, leaf, number, record, refused, taken, whole } from '../read/fields/fields.ts';

/**
 * What a machine is told to do with a path. `mark` scores a line that stays on the board; `ink` draws one on the face; `registration` targets are
 * printed, for a cutter that looks for them; `score` is a light pass before the cut; `note` is never cut.
 */
export const OPERATIONS = ['mark', 'ink', 'registration', 'score', 'inner', 'outer', 'bevel', 'note'] as const;
export type Operation = (typeof OPERATIONS)[number];

export interface OperationSetting {
  /** Of the file: `[A-Za-z0-9_$-]`, 31 characters at most. */
  readonly layer: string;
  /** `#rrggbb`. */
  readonly colour: string;
  /** Of a plotter; 0 leaves the operation out of a plotter's file. */
  readonly pen: number;
  /** mm/s. */
  readonly speed?: number;
}

const usual = (layer: string, colour: string, pen: number): OperationSetting => ({ layer, colour, pen });

/** The colours are our own and mean nothing to any driver. */
const USUAL: Readonly<Record<Operation, OperationSetting>> = {
  mark: usual('mark', '#009030', 3),
  ink: usual('ink', '#402080', 5),
  registration: usual('registration', '#303030', 4),
  score: usual('score', '#e08000', 2),
  inner: usual('inner', '#0060c0', 1),
  outer: usual('outer', '#c00040', 1),
  bevel: usual('bevel', '#8020c0', 1),
  note: usual('note', '#a0a0a0', 0),
};

/** Allowed by every dialect of DXF, and an id in SVG. */
const LAYER = /^[A-Za-z][A-Za-z0-9_$-]{0,30}$/;

const layer = () =>
  leaf(
    'a layer’s name',
    (input) => {
      if (typeof input !== 'string') return undefined;
      const hint = 'use up to 31 letters (a to z), digits, hyphens and underscores, a letter first';
      return LAYER.test(input)
        ? taken(input)
        : refused('layer-unusable', 'this cannot name a layer in every file', hint);
    },
    'The layer that the machine’s driver expects',
    ['CUT'],
    { type: 'string', pattern: LAYER.source },
  );

export const speed = (about: string) => number(`${about}, mm a second`, [20], 0.01, 5000, 'a number of mm a second');

export function operationsSchema() {
  const operation = described(
    record(
      {
        layer: z.optional(layer()),
        colour: z.optional(colour('The colour that the machine’s driver expects', ['#c62828'])),
        pen: z.optional(whole('The pen of a plotter; 0 leaves it out of a plotter’s file', [1], 0, 8)),
        speed: z.optional(speed('How fast the tool goes')),
      },
      'a map: layer, colour, pen, speed',
    ),
    'How one operation is told to the machine',
  );
  const shape = Object.fromEntries(OPERATIONS.map((name) => [name, z.optional(operation)])) as Record<
    (typeof OPERATIONS)[number],
    z.ZodMiniOptional<typeof operation>
  >;
  return described(record(shape, `a map: ${OPERATIONS.join(', ')}`), 'Layer, colour, pen and speed by operation');
}

export function operationsFrom(
  given: z.output<ReturnType<typeof operationsSchema>> | undefined,
): Readonly<Record<Operation, OperationSetting>> {
  return Object.fromEntries(
    OPERATIONS.map((name) => [name, { ...USUAL[name], ...defined(given?.[name] ?? {}) }]),
  ) as Record<Operation, OperationSetting>;
}
