import { rectangle } from './rectangle.ts';
import type { Shape } from './shape.ts';

/** Every shape of opening, by the word that a job uses for it. */
export const SHAPES = { rectangle } as const satisfies Record<string, Shape>;

export type ShapeKind = keyof typeof SHAPES;

export const SHAPE_KINDS = Object.keys(SHAPES) as readonly ShapeKind[];
