/** Sides are named from the face view. */
export type Side = 'top' | 'right' | 'bottom' | 'left';

export const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left'];

export type BySide<T> = Readonly<Record<Side, T>>;

/** Sides that were given; the others are left to the solver. */
export type SomeSides = Readonly<Partial<Record<Side, number>>>;

export const allSides = <T>(value: T): BySide<T> => ({ top: value, right: value, bottom: value, left: value });

/** Lengths by side; `single` where one length was written for all, `paired` where one was for left and right. */
export type GivenBySides = SomeSides & { readonly single?: true; readonly paired?: true };

/** The mark is left out of lists and comparisons. */
export function marked(sides: SomeSides, mark: 'single' | 'paired'): GivenBySides {
  return Object.defineProperty(sides, mark, { value: true, enumerable: false });
}
