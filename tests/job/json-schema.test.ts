import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { jsonSchema, SCHEMA_KINDS } from '../../src/job/json-schema.ts';
import { BAD_JOBS, BAD_SHOPS } from './bad-texts.ts';
import { accepted, HERON, read, SHOP, SMALL, shopOf } from './texts.ts';

interface Schema {
  readonly [key: string]: unknown;
}

const ajv = new Ajv({
  strict: true,
  allowUnionTypes: true,
  strictTypes: false,
  strictRequired: false,
  strictTuples: false,
});
const validate = { job: ajv.compile(jsonSchema('job')), shop: ajv.compile(jsonSchema('shop')) };

/** Every schema within a schema, with the keys that lead to it; the ways to write a price are described as one. */
function* within(schema: Schema, path = ''): Generator<readonly [string, Schema]> {
  yield [path, schema];
  const children: (readonly [string, unknown])[] = Object.entries((schema.properties ?? {}) as Schema);
  for (const list of ['anyOf', 'prefixItems']) {
    for (const [index, child] of ((schema[list] ?? []) as unknown[]).entries())
      children.push([`${list}${index}`, child]);
  }
  for (const one of ['items', 'additionalProperties']) children.push([one, schema[one]]);
  for (const [key, child] of children) {
    if (typeof child === 'object' && child !== null && !path.endsWith('.price'))
      yield* within(child as Schema, `${path}.${key}`);
  }
}

describe.each(SCHEMA_KINDS)('the JSON Schema of a %s', (kind) => {
  it('is draft 2020-12, has a title, and is plain data', () => {
    const schema = jsonSchema(kind);
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: `Matwright ${kind}`,
    });
    expect(JSON.parse(JSON.stringify(schema))).toStrictEqual(schema);
    expect(ajv.validateSchema(schema)).toBe(true);
  });

  it('describes every key, with examples of every value, and takes its own examples', () => {
    for (const [path, schema] of within(jsonSchema(kind))) {
      const key = path.split('.').at(-1)!;
      if (/^(?:anyOf|prefixItems)\d$/.test(key)) continue;
      expect([path, schema.description]).toStrictEqual([path, expect.stringMatching(/\w.*[^.]$/)]);
      const examples = schema.examples;
      if (schema.type === 'object' || path === '' || key === 'items' || path.includes('anyOf')) continue;
      if (['top', 'bottom', 'left', 'right', 'sides'].includes(key)) continue;
      expect([path, examples]).toStrictEqual([path, expect.any(Array)]);
    }
    for (const [path, schema] of within(jsonSchema(kind))) {
      const { examples = [] } = schema as { examples?: readonly unknown[] };
      const valid = ajv.compile({ ...schema, $schema: 'https://json-schema.org/draft/2020-12/schema' });
      for (const example of examples) expect([path, example, valid(example)]).toStrictEqual([path, example, true]);
    }
  });

  it('lets the reader take its examples too', () => {
    const properties = jsonSchema(kind).properties as Record<string, Schema>;
    for (const [key, { examples }] of Object.entries(properties)) {
      for (const example of (examples ?? []) as readonly unknown[]) {
        if (kind === 'shop') {
          const named = { mouldings: { ash: {} }, boards: { 'bone-4': {} } };
          accepted(shopOf(JSON.stringify({ ...named, [key]: example }), 'x.json'));
        } else if (key !== 'mat' && key !== 'bench' && key !== 'print') {
          accepted(read(JSON.stringify({ openings: [{}], [key]: example }), SHOP, 'x.json'));
        }
      }
    }
  });
});

describe('a validator with the schema', () => {
  it('accepts the samples', () => {
    for (const text of [HERON, SMALL]) expect([text, validate.job(parse(text))]).toStrictEqual([text, true]);
    expect(validate.shop(parse(SHOP))).toBe(true);
    expect(validate.shop({})).toBe(true);
  });

  /** What only the reader knows: that a text is a length, what a length may be, what the shop lists. */
  const BEYOND =
    /^(?:length|size|sides|ratio|paper|margin|head|board|printer|moulding|offsets|weighting|machine-|layer-|reveal|text-line$|text-missing|artwork|shape-field|outline|place-|row-weighting|frame-unknown|glazing|backing|as-cut|shelf-)/;

  it.each([...BAD_JOBS.map((bad) => ['job', ...bad] as const), ...BAD_SHOPS.map((bad) => ['shop', ...bad] as const)])(
    'rejects a bad %s as the reader does: %j (%s)',
    (kind, text, code) => {
      const value: unknown = parse(text);
      if (text.includes('__proto__')) return expect(code).toBe('key-unknown');
      const sayable = !BEYOND.test(code) && !text.includes('ratio');
      if (sayable) expect(validate[kind](value)).toBe(false);
      else expect(typeof validate[kind](value)).toBe('boolean');
    },
  );
});
