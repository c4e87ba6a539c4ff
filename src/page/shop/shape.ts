import type { Plain } from '../../read/edit/yaml-print.ts';
import { carried } from '../engine/scripts.ts';

/** What may stand in a place of the shop's file, as its schema tells it. */
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

let read: Shape | undefined;
const whole = (): Shape => {
  read ??= (carried('shop-schema') as Shape | null) ?? {};
  return read;
};

export const sectionShape = (name: string): Shape => whole().properties?.[name] ?? {};

/** Readings are what the shop's file keeps of them, less what came of them. */
export function readingsShape(kind: string): Shape {
  const one = whole().properties?.calibrations?.properties?.[kind]?.items ?? {};
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
