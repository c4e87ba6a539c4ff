import type { Plain } from '../../read/edit/yaml-print.ts';

/** A value that differs between two texts. */
export interface Difference {
  readonly path: readonly (string | number)[];
  readonly old: Plain | undefined;
  readonly now: Plain | undefined;
}

type Branch = Readonly<Record<string, Plain>>;

/** Where two values differ, as deep as both are maps or lists. */
export function differences(
  old: Plain | undefined,
  now: Plain | undefined,
  path: Difference['path'] = [],
): readonly Difference[] {
  const [a, b] = [branchOf(old), branchOf(now)];
  if (a === undefined || b === undefined || Array.isArray(old) !== Array.isArray(now))
    return JSON.stringify(old) === JSON.stringify(now) ? [] : [{ path, old, now }];
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return keys.flatMap((key) => differences(a[key], b[key], [...path, Array.isArray(old) ? Number(key) : key]));
}

/** A list by its places, a map by its keys. */
const branchOf = (value: Plain | undefined): Branch | undefined =>
  typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries<Plain>(value)) : undefined;
