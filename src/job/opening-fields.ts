import * as z from 'zod/mini';
import { leaf, oneOf, type Reading, type Refusal, refused, taken, whole } from '../read/fields/fields.ts';
import { lengthFields } from '../read/fields/length-fields.ts';
import { readOutline } from '../shapes/read-outline.ts';
import type { Field, Fields } from '../shapes/shape.ts';
import { SHAPE_KINDS, type ShapeKind, shapeOf } from '../shapes/shapes.ts';
import { type LengthUnit, mmPer } from '../units/units.ts';

/** Every field of every shape, by name. Two shapes that share a name mean the same by it. */
const FIELDS: Readonly<Record<string, Field>> = Object.assign({}, ...SHAPE_KINDS.map((kind) => shapeOf(kind).fields));
const FIELD_NAMES: readonly string[] = Object.keys(FIELDS);

export function shapeFields(unit: LengthUnit) {
  const { length } = lengthFields(unit);
  const of = (name: string): string => `of ${SHAPE_KINDS.filter((kind) => shapeOf(kind).fields[name] !== undefined)}`;
  const make = (name: string, field: Field) => {
    const about = `${field.about} (${of(name)})`;
    switch (field.kind) {
      case 'length':
        return z.optional(length(about, field.examples, field));
      case 'count':
        return z.optional(whole(about, field.examples, field.least, field.most));
      case 'choice':
        return z.optional(oneOf(about, field.words));
      case 'outline':
        return z.optional(
          leaf('an outline: SVG path data or corners', (input) => outlineIn(input, unit), about, field.examples, {
            type: 'string',
          }),
        );
      default: {
        const never: never = field;
        throw new TypeError(`unknown field ${JSON.stringify(never)}`);
      }
    }
  };
  return Object.fromEntries(Object.entries(FIELDS).map(([name, field]) => [name, make(name, field)]));
}

function outlineIn(input: unknown, unit: LengthUnit): Reading<unknown> {
  if (typeof input !== 'string') return undefined;
  const read = readOutline(input, mmPer(unit));
  return read.ok ? taken(read.path) : refused('outline-unreadable', read.message, read.hint);
}

/** What is wrong with the fields of an opening's shape, or undefined. */
export function shapeRefusal(given: Readonly<Record<string, unknown>>): Refusal | undefined {
  const kind = (given.shape ?? (given.outline === undefined ? 'rectangle' : 'outline')) as ShapeKind;
  // An unknown one was told of already.
  if (!SHAPE_KINDS.includes(kind)) return undefined;
  const { fields } = shapeOf(kind);
  const stray = FIELD_NAMES.find((name) => given[name] !== undefined && fields[name] === undefined);
  if (stray !== undefined) {
    const of = SHAPE_KINDS.filter((each) => shapeOf(each).fields[stray] !== undefined).join(' or ');
    const message = `${stray} is nothing that ${kind} has`;
    return { code: 'shape-field-stray', message, hint: `take it out, or write shape: ${of}` };
  }
  for (const [name, field] of Object.entries(fields)) {
    const usual = field.kind === 'outline' ? undefined : field.usual;
    if (given[name] !== undefined || usual !== undefined) continue;
    const example = field.kind === 'choice' ? field.words[0] : field.examples[0];
    const message = `a shape ${kind} needs its ${name}`;
    return { code: 'shape-field-missing', message, hint: `write for example ${name}: ${example}` };
  }
  return undefined;
}

export function fieldsFrom(given: object): Fields | undefined {
  const values = given as Readonly<Record<string, Fields[string] | undefined>>;
  const found = Object.fromEntries(
    FIELD_NAMES.flatMap((name) => {
      const value = values[name];
      return value === undefined ? [] : [[name, value]];
    }),
  );
  return Object.keys(found).length === 0 ? undefined : found;
}
