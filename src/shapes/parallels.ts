import type { Box } from '../geometry/box.ts';
import { parallelOf } from '../geometry/parallel.ts';
import type { Path } from '../geometry/path.ts';
import type { Fields, Shape } from './shape.ts';

/** The parallel of any outline; undefined where nothing, or no single outline, is left. */
export function parallelBy(outline: Shape['outline']): (frame: Box, by: number, fields?: Fields) => Path | undefined {
  return (frame, by, fields = {}) => {
    if (!(frame.width > 0 && frame.height > 0)) return undefined;
    const made = parallelOf(outline(frame, fields), by);
    return made === 'nothing' || made === 'parts' ? undefined : made;
  };
}

export const lengthOf = (fields: Fields, name: string, otherwise: number): number => {
  const value = fields[name];
  return typeof value === 'number' ? value : otherwise;
};
