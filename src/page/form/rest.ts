import { type ComponentChild, h } from 'preact';
import type { Path } from '../state/piece.ts';
import { jobShape, keyWords } from './shape.ts';
import { Opened, ShapeFields } from './shape-fields.ts';

export interface RestOf {
  readonly title: string;
  readonly path: Path;
  /** Keys that have fields of their own. */
  readonly but: readonly string[];
}

/** What the job's schema knows of a place and is seldom said: so each of its keys has a field, a new one by itself. */
export function Rest({ title, path, but }: RestOf): ComponentChild {
  const others = Object.entries(jobShape(path).properties ?? {}).filter(([key]) => !but.includes(key));
  if (others.length === 0) return null;
  return h(
    Opened,
    { title },
    others.map(([key, shape]) => h(ShapeFields, { key, shape, path: [...path, key], label: keyWords(key) })),
  );
}
