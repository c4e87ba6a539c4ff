import { arch, roundArch } from './arch.ts';
import { circle } from './circle.ts';
import { clipped } from './clipped.ts';
import { free } from './free.ts';
import { notched } from './notched.ts';
import { oval } from './oval.ts';
import { rectangle } from './rectangle.ts';
import { regular } from './regular.ts';
import { rounded } from './rounded.ts';
import type { Shape } from './shape.ts';

/** Every shape of opening, by the word that a job uses for it. */
export const SHAPES = {
  rectangle,
  rounded,
  notched,
  clipped,
  oval,
  circle,
  'round-arch': roundArch,
  arch,
  polygon: regular,
  outline: free,
} as const satisfies Record<string, Shape>;

export type ShapeKind = keyof typeof SHAPES;

export const SHAPE_KINDS = Object.keys(SHAPES) as readonly ShapeKind[];
export const shapeOf = (kind: ShapeKind): Shape => SHAPES[kind];
