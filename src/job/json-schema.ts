import * as z from 'zod/mini';
import { DESCRIPTIONS } from '../read/fields/fields.ts';
import { shopSchema } from '../shop/shop.ts';
import { UNITS } from '../shop/units.ts';
import { jobSchema } from './job.ts';

/** What there are schemas of. */
export const SCHEMA_KINDS = ['job', 'shop'] as const;
export type SchemaKind = (typeof SCHEMA_KINDS)[number];

const TITLES: Readonly<Record<SchemaKind, string>> = { job: 'Matwright job', shop: 'Matwright shop' };

/**
 * The JSON Schema (draft 2020-12) of what a job or a shop may hold, for editors and for the reference page. It tells
 * kinds, keys and allowed words; that a text is a length, and what lengths are allowed, only the reader knows.
 */
export function jsonSchema(kind: SchemaKind): Record<string, unknown> {
  const schema = kind === 'job' ? jobSchema(UNITS) : shopSchema(UNITS);
  const { $schema, ...rest } = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-2020-12',
    metadata: DESCRIPTIONS,
    // A leaf is a function to the library; its description says what it takes.
    unrepresentable: 'any',
    // Examples are left out by the library wherever a value is transformed; ours are always of what is written.
    override: ({ zodSchema, jsonSchema: made }) => {
      const examples = DESCRIPTIONS.get(zodSchema)?.examples;
      if (Array.isArray(examples)) made.examples = examples;
    },
  });
  return { $schema, title: TITLES[kind], ...rest };
}
