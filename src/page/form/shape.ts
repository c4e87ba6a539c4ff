import { signal } from '@preact/signals';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { shapes } from '../engine/engines.ts';
import type { Path } from '../state/piece.ts';

/** What may stand in a place of a job or of the shop's file, as its schema tells it. */
export interface Shape {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly examples?: readonly Plain[];
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  /** Of a map whose keys are names. */
  readonly additionalProperties?: Shape | boolean;
  readonly items?: Shape;
  readonly anyOf?: readonly Shape[];
}

/** Nothing is known before the small worker has told it, which it does first of all. */
const known = signal<{ readonly job: Shape; readonly shop: Shape }>({ job: {}, shop: {} });

export async function learnShapes(): Promise<void> {
  const { job, shop } = await shapes();
  known.value = { job, shop };
}

export const sectionShape = (name: string): Shape => known.value.shop.properties?.[name] ?? {};

/** What may stand in a place of a job: of its forms the one that has keys, or items. */
export const jobShape = (path: Path): Shape =>
  path.reduce<Shape>((at, step) => {
    const next = (typeof step === 'number' ? at.items : at.properties?.[step]) ?? {};
    return next.anyOf?.find(({ properties, items }) => properties !== undefined || items !== undefined) ?? next;
  }, known.value.job);

/** Whether it may be said for each side. */
export const hasSides = ({ anyOf }: Shape): boolean =>
  anyOf?.some(({ properties }) => properties !== undefined && Object.hasOwn(properties, 'top')) === true;

/** Readings are what the shop's file keeps of them, less what came of them. */
export function readingsShape(kind: string): Shape {
  const one = known.value.shop.properties?.calibrations?.properties?.[kind]?.items ?? {};
  const { result: _, ...properties } = one.properties ?? {};
  return { ...one, properties };
}

export const isNamed = ({ additionalProperties }: Shape): boolean => typeof additionalProperties === 'object';

/** Of several forms the one that the value has, else the plainest: what stands on one line. */
export function formOf(shape: Shape, value: Plain | undefined): Shape {
  const { anyOf } = shape;
  if (anyOf === undefined) return shape;
  const about = { description: shape.description ?? '', examples: shape.examples ?? [] };
  const list = Array.isArray(value) ? anyOf.find(({ items }) => items !== undefined) : undefined;
  const map =
    typeof value === 'object' && !Array.isArray(value)
      ? anyOf.find(({ properties }) => properties !== undefined)
      : undefined;
  const plain = anyOf.find(({ properties, items }) => properties === undefined && items === undefined);
  return { ...about, ...(list ?? map ?? plain ?? {}) };
}

/** What a new one of these is before anything is typed: an example, since what is needed must be there. */
export function firstOf(shape: Shape): Plain {
  const [example] = shape.examples ?? [];
  if (Array.isArray(example)) return (example as readonly Plain[])[0] ?? '';
  if (typeof example === 'object') return Object.values<Plain>(example)[0] ?? '';
  return example ?? '';
}

/** `straightedgeOn` as it is said: `Straightedge on`. */
export function keyWords(key: string): string {
  const words = key.replaceAll(/(?<=[a-z])(?=[A-Z])/gu, ' ').toLowerCase();
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
