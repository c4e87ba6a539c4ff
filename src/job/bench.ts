import * as z from 'zod/mini';
import type { Side } from '../geometry/sides.ts';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { described, id, oneOf, record, yesNo } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import { type Guide, usualGuide } from '../shop/guide.ts';
import { HEAD, type Head, NO_HEAD } from '../shop/head.ts';
import type { Shop } from '../shop/shop.ts';
import type { LengthUnit, Units } from '../units/units.ts';

export interface BenchRequest {
  readonly head: Head;
  readonly guide: Guide;
  /** The graduation that settings are rounded to, mm. */
  readonly graduation: number;
  readonly snap: boolean;
  readonly stack: 'together' | 'apart';
  /** Lines and marks come off a pattern, or are measured and drawn by pencil, from the ticket. */
  readonly mark: 'pattern' | 'pencil';
  /** The edge along which window and backing hinge together; undefined: the longer one, left or top. */
  readonly hinge?: Side;
}

const HEAD_NAMED = 'The head of the shop that cuts the bevels, or none; the only one that the shop has without it';
const MARKS = ['pattern', 'pencil'] as const;

export function benchSchema(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const graduation = 'What guide settings are rounded to; that of the guide where it is left out';
  const hinge = 'The edge along which window and backing hinge; the longer one without it';
  const bench = record(
    {
      head: z.optional(id(HEAD_NAMED, ['pull-45', NO_HEAD])),
      graduation: z.optional(length(graduation, ['1/16', '1 mm'], { least: 0.05, most: 26 })),
      snap: z.optional(yesNo('Move the opening evenly, so that settings lie on the graduation')),
      stack: z.optional(oneOf('Under mats cut on the top mat, or each by itself', ['together', 'apart'])),
      mark: z.optional(oneOf('How the back is marked out: by the pattern, or by pencil from the ticket', MARKS)),
      hinge: z.optional(oneOf(hinge, ['top', 'right', 'bottom', 'left'])),
    },
    'a map: head, graduation, snap, stack, mark, hinge',
  );
  return described(bench, 'How it is cut');
}

/** The rule of printers: the head that is named; else the shop's only one; else none. `none` can be named too. */
function headFor(name: string | undefined, { heads }: Shop, problems: Problem[]): Head {
  const only = heads.size === 1 ? [...heads.values()][0] : undefined;
  if (name === undefined) return only ?? HEAD;
  return (name === NO_HEAD ? undefined : lookUp('head', name, heads, ['bench', 'head'], problems)) ?? HEAD;
}

export function benchFrom(
  given: z.output<ReturnType<typeof benchSchema>>,
  shop: Shop,
  units: Units,
  problems: Problem[],
): BenchRequest {
  const guide = shop.guide ?? usualGuide(units);
  return {
    head: headFor(given.head, shop, problems),
    guide,
    graduation: given.graduation ?? guide.graduation,
    snap: given.snap ?? false,
    stack: given.stack ?? 'together',
    mark: given.mark ?? 'pattern',
    ...defined({ hinge: given.hinge }),
  };
}
