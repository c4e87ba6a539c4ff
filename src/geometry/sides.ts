/** Sides are named from the face view. */
export type Side = 'top' | 'right' | 'bottom' | 'left';

export const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left'];

const MIRRORED: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' };

/** The side as it lies on the back: left and right change places. */
export const mirroredSide = (side: Side): Side => MIRRORED[side];

export type BySide<T> = Readonly<Record<Side, T>>;

/** Sides that were given; the others are left to the solver. */
export type SomeSides = Readonly<Partial<Record<Side, number>>>;

export const allSides = <T>(value: T): BySide<T> => ({ top: value, right: value, bottom: value, left: value });

/** Lengths by side, and how they were written: one for all, or one for left and right; else each by itself. */
export type GivenBySides = SomeSides & { readonly written?: 'once' | 'pair' };

export const namesNoSide = (given: SomeSides): boolean => SIDES.every((side) => given[side] === undefined);
