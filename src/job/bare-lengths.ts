import type * as z from 'zod/mini';
import type { Problem } from '../problems/problem.ts';
import { LENGTHS } from '../read/fields/length-fields.ts';
import { type Parsed, parseLength, parseSize } from '../units/parse.ts';
import type { LengthUnit } from '../units/units.ts';
import { jobSchema } from './job.ts';

type Path = Problem['path'];

/**
 * Where a job, as a plain tree, holds lengths and sizes without a unit of their own: what the job's unit decides. The schema says
 * which values are lengths, so that none is forgotten and no count is taken for one.
 */
export function bareLengths(tree: unknown): readonly Path[] {
  const found = collect(jobSchema('in'), tree, []).map((path): [string, Path] => [JSON.stringify(path), path]);
  return [...new Map(found).values()];
}

function collect(schema: z.core.$ZodType, value: unknown, path: Path): readonly Path[] {
  if (value === undefined) return [];
  const kind = LENGTHS.get(schema)?.kind;
  if (kind !== undefined) return measured(kind, value, path);
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object':
      if (!isMap(value)) return [];
      return Object.entries(def.shape).flatMap(([key, each]) => collect(each, value[key], [...path, key]));
    case 'array':
      return Array.isArray(value) ? value.flatMap((each, i) => collect(def.element, each, [...path, i])) : [];
    case 'union':
      return def.options.flatMap((option) => collect(option, value, path));
    case 'optional':
      return collect(def.innerType, value, path);
    case 'lazy':
      return collect(def.getter(), value, path);
    case 'pipe':
      return [def.in, def.out].flatMap((end) => collect(end, value, path));
    default:
      // All else is a leaf that holds no length.
      return [];
  }
}

function measured(kind: 'length' | 'size', value: unknown, path: Path): readonly Path[] {
  if (kind === 'size' && Array.isArray(value))
    return value.flatMap((each, i) => measured('length', each, [...path, i]));
  return typeof value === 'number' || (typeof value === 'string' && isBare(kind, value)) ? [path] : [];
}

/** A text that is another length in another unit. */
function isBare(kind: 'length' | 'size', text: string): boolean {
  const read = (unit: LengthUnit): Parsed<unknown> =>
    kind === 'length' ? parseLength(text, unit) : parseSize(text, unit);
  const [inches, mm] = [read('in'), read('mm')];
  return inches.ok && mm.ok && JSON.stringify(inches.value) !== JSON.stringify(mm.value);
}

const isMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
