import type { Forest } from '../trees/forest.ts';

/** A smallest box around some of the blanks that edge-to-edge cuts can divide into them. */
export type Bundle = Single | Pair;

interface Box {
  readonly width: number;
  readonly height: number;
}

interface Single extends Box {
  readonly type: number;
}

/** Two boxes that follow each other along x or y. */
interface Pair extends Box {
  readonly along: 'x' | 'y';
  readonly parts: readonly [Bundle, Bundle];
}

/** Lays a bundle into a leftover that holds it; what is left lies beside it. */
export function lay(forest: Forest, leftover: number, bundle: Bundle): void {
  if ('type' in bundle) {
    forest.place(leftover, bundle.type, bundle.width, bundle.height, false);
    return;
  }
  const [first, second] = bundle.parts;
  const [part, rest] = forest.divide(leftover, bundle.along, bundle.along === 'x' ? first.width : first.height);
  lay(forest, part, first);
  lay(forest, rest, second);
}
