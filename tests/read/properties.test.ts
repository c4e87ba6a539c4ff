import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Lexer, Parser, parseAllDocuments } from 'yaml';
import { jsonSchema } from '../../src/job/json-schema.ts';
import { showProblem } from '../../src/problems/show.ts';
import { MAX_DEPTH } from '../../src/read/text/bounds.ts';
import type { Node } from '../../src/read/text/node.ts';
import { readText } from '../../src/read/text/text.ts';
import { YamlScan } from '../../src/read/text/yaml-scan.ts';
import { accepted, HERON, read, SHOP, shopOf } from '../job/texts.ts';

/** Plain data as block YAML: every key on its own line, texts in JSON's quotes, which YAML takes too. */
function blockYaml(value: unknown, indent = ''): string {
  if (Array.isArray(value)) {
    if (value.length === 0) return ' []\n';
    return `\n${value.map((item) => `${indent}-${blockYaml(item, `${indent}  `)}`).join('')}`;
  }
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value);
    if (entries.length === 0) return ' {}\n';
    return `\n${entries.map(([key, item]) => `${indent}${key}:${blockYaml(item, `${indent}  `)}`).join('')}`;
  }
  return ` ${JSON.stringify(value)}\n`;
}

const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

/** Sound jobs: every key now and then. */
const length = fc.integer({ min: 16, max: 96 }).map((sixteenths) => `${sixteenths}/16 in`);
const sides = fc.oneof(
  length,
  fc.record({ top: length, bottom: length, sides: length }, { requiredKeys: [] }),
  fc.record({ left: length, right: length }, { requiredKeys: [] }),
);
const size = fc.oneof(
  fc.tuple(fc.integer({ min: 4, max: 60 }), fc.integer({ min: 4, max: 60 })),
  fc.tuple(length, length).map(([width, height]) => `${width} x ${height}`),
);
const jobs = fc
  .record(
    {
      title: optional(fc.constantFrom('Heron', 'Цапля, 1/2', 'a: b #c', '"quoted"', "it's")),
      units: optional(fc.constantFrom('in', 'cm')),
      mat: optional(
        fc.record(
          {
            outer: size,
            border: sides,
            weighting: fc.oneof(
              fc.constantFrom('none', 'diagonal'),
              length.map((add) => ({ add })),
              fc.constantFrom({ ratio: '4/3' }, { ratio: 1.5 }),
            ),
            layers: fc.constantFrom([{}], [{ board: 'bone-4' }, { board: 'slate-4', reveal: '1/4', bevel: 60 }]),
          },
          { requiredKeys: [] },
        ),
      ),
      openings: fc
        .oneof(
          fc.record({ artwork: size, overlap: sides }, { requiredKeys: ['artwork'] }),
          fc.record({ artwork: size, float: sides }),
          fc.record({ size, measure: fc.constantFrom('face', 'sight') }, { requiredKeys: ['size'] }),
        )
        .map((opening) => [opening]),
      count: optional(fc.integer({ min: 1, max: 999 })),
      bench: optional(fc.constantFrom({ head: 'pull-45', snap: true }, { stack: 'apart', hinge: 'top' })),
      print: optional(fc.constantFrom({ paper: 'a3', lap: '1 cm' }, { transfer: 'cut-through', join: 'butt' })),
    },
    { requiredKeys: ['openings'] },
  )
  .map((job) => JSON.parse(JSON.stringify(job)) as Record<string, unknown>);

describe('reading', () => {
  it('takes the same job from JSON, from flow YAML and from block YAML', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const json = accepted(read(JSON.stringify(job), SHOP, 'heron.json'));
        for (const text of [JSON.stringify(job), JSON.stringify(job, null, 2), blockYaml(job)]) {
          const yaml = accepted(read(text, SHOP, 'heron.yaml'));
          expect(yaml.job).toStrictEqual(json.job);
        }
        expect(JSON.parse(JSON.stringify(json.job))).toStrictEqual(json.job);
      }),
      { numRuns: 150 },
    );
  });

  it('takes the same sizes in inches, centimetres and millimetres', () => {
    fc.assert(
      fc.property(fc.integer({ min: 64, max: 64 * 60 }), fc.integer({ min: 64, max: 64 * 60 }), (w, h) => {
        const outer = (units: string, factor: number) => {
          const sides = [w, h].map((parts) => (parts / 64) * factor);
          return accepted(read(`units: ${units}\nmat: {outer: [${sides}]}\nopenings: [{}]\n`)).job.mat.outer!;
        };
        const inches = outer('in', 1);
        for (const other of [outer('cm', 2.54), outer('mm', 10 * 2.54)]) {
          expect(other.width).toBeCloseTo(inches.width, 9);
          expect(other.height).toBeCloseTo(inches.height, 9);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('never throws at a job or a shop whose characters were changed, and tells where what is wrong', () => {
    const mutation = fc.record({
      at: fc.nat(),
      drop: fc.nat({ max: 12 }),
      put: fc.oneof(
        fc.constantFrom(
          ...'{}[]:,#&*!|>\'"%@`\\-?~ \t\n\r.0/',
          ': ',
          '- ',
          '\n  ',
          '*a',
          '&a ',
          '<<: ',
          '---\n',
          '!!x ',
        ),
        fc.string({ unit: 'binary', maxLength: 3 }),
        fc.constantFrom('__proto__', 'null', '.nan', '1e999', '-1', 'true', '[[[[', '{{{{'),
      ),
    });
    const bases = fc.constantFrom(HERON, SHOP);
    const files = fc.constantFrom('x.yaml', 'x.yaml', 'x.json', 'x');
    fc.assert(
      fc.property(bases, files, fc.array(mutation, { minLength: 1, maxLength: 4 }), (base, file, mutations) => {
        let text = base;
        for (const { at, drop, put } of mutations) {
          const start = at % (text.length + 1);
          text = text.slice(0, start) + put + text.slice(start + drop);
        }
        for (const result of [read(text, SHOP, file), shopOf(text, file)]) {
          if (result.ok) continue;
          expect(result.problems.length).toBeGreaterThan(0);
          for (const problem of result.problems) {
            expect(problem.file).toBe(file);
            expect(problem.line).toBeLessThanOrEqual(text.split(/\r\n?|\n/).length);
            expect(problem.column).toBeGreaterThan(0);
            expect(showProblem(problem)).not.toMatch(/[\p{Cc}\p{Cs}\u202a-\u202e]/u);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('never throws at values of any kind in any place', () => {
    const keys = Object.keys(jsonSchema('job').properties as object);
    const more = ['outer', 'border', 'layers', 'board', 'frame', 'size', 'top', 'ratio', 'margin', '__proto__', 'x'];
    const { value } = fc.letrec((tie) => ({
      value: fc.oneof(
        { depthSize: 'small' },
        fc.string(),
        fc.double(),
        fc.boolean(),
        fc.constant(null),
        fc.array(tie('value'), { maxLength: 3 }),
        fc.dictionary(fc.constantFrom(...keys, ...more), tie('value'), { maxKeys: 4 }),
      ),
    }));
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...keys), value, { maxKeys: 6 }), (given) => {
        const text = JSON.stringify(given);
        for (const result of [read(text, SHOP, 'x.json'), read(text, SHOP, 'x.yaml'), shopOf(text, 'x.json')]) {
          if (!result.ok) expect(result.problems.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 500 },
    );
  });
});

/** Lists and maps within one another in the parser's own tree: the longest chain. */
function depthOf(token: unknown): number {
  if (typeof token !== 'object' || token === null) return 0;
  const { type, items, value, key } = token as { type?: string; items?: unknown[]; value?: unknown; key?: unknown };
  const within = [...(items ?? []), value, key].map(depthOf);
  const own = type === 'block-map' || type === 'block-seq' || type === 'flow-collection' ? 1 : 0;
  return own + Math.max(0, ...within);
}

describe('nesting', () => {
  /** Made of what can nest, confuse, or hide what nests. */
  const pieces = [
    '[',
    ']',
    '{',
    '}',
    '- ',
    '? ',
    ': ',
    'a: ',
    'a',
    ',',
    '\n',
    '\n ',
    '\n  ',
    '"',
    "'",
    '#',
    ' #',
    '|\n',
  ];
  const more = ['\n   ', '>\n', '&a ', '---\n', '\t', '-\n', 'a:\n', '- - ', '{a: ', '[[', ']]', '\\'];
  const texts = fc
    .tuple(fc.array(fc.constantFrom(...pieces, ...more), { minLength: 1, maxLength: 12 }), fc.nat({ max: 60 }))
    .map(([unit, times]) => unit.join('').repeat(times));

  it('is never counted too low where the text is well formed', () => {
    let wellFormed = 0;
    fc.assert(
      fc.property(texts, (text) => {
        const scan = new YamlScan();
        for (const piece of new Lexer().lex(text)) if (scan.next(piece) !== undefined) return;
        if (scan.end() !== undefined || parseAllDocuments(text).some(({ errors }) => errors.length > 0)) return;
        wellFormed++;
        for (const token of new Parser().parse(text)) expect(depthOf(token)).toBeLessThanOrEqual(MAX_DEPTH);
      }),
      { numRuns: 3000 },
    );
    expect(wellFormed).toBeGreaterThan(200);
  });

  it('of whatever text never comes through to what is built of it', () => {
    fc.assert(
      fc.property(texts, fc.constantFrom('x.yaml', 'x.json'), (text, file) => {
        const result = readText(text, file);
        if (result.ok) expect(levels(result.value.source.root)).toBeLessThanOrEqual(MAX_DEPTH);
      }),
      { numRuns: 3000 },
    );
  });
});

function levels(node: Node): number {
  if (node.kind === 'list') return 1 + Math.max(0, ...node.items.map(levels));
  return node.kind === 'map' ? 1 + Math.max(0, ...[...node.entries.values()].map(({ value }) => levels(value))) : 0;
}
