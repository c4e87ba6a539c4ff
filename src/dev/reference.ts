/**
 * `npm run reference`: the reference of jobs and shops from their JSON Schemas, into `examples/reference.md`,
 * every message into `examples/messages.md`, and the library into `examples/library.md`. Tests compare, so that the pages stay true.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { jsonSchema, type SchemaKind } from '../job/json-schema.ts';
import { libraryPage } from './library.ts';
import { messagesPage } from './messages.ts';

interface Node {
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Node[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node | false;
  readonly additionalProperties?: Node | false;
  readonly examples?: readonly unknown[];
}

const HEAD = `# Reference: what a job and a shop may hold

Generated from the schemas (\`npm run reference\`). \`matwright schema job\` and \`matwright schema shop\` print them for
editors. Lengths are numbers in the file's \`units\`, or texts such as \`16 1/2\`, \`16-1/2 in\`, \`5/8"\`, \`41.9 cm\`,
\`419 mm\`; sizes are width × height: \`16 x 20\` or \`[16, 20]\`. Any key that is not listed is an error. Keys in **bold**
must be there.
`;

/** One row for each key, its path before it; what can be written in several ways has the rows of each. */
function* rows(node: Node, path: string): Generator<string> {
  for (const [key, value] of Object.entries(node.properties ?? {})) {
    const at = path === '' ? key : `${path}.${key}`;
    const must = node.required?.includes(key) === true;
    yield row(at, value, must);
    yield* inner(value, at);
  }
  if (node.additionalProperties !== undefined && node.additionalProperties !== false) {
    const at = path === '' ? 'NAME' : `${path}.NAME`;
    yield row(at, node.additionalProperties, false);
    yield* inner(node.additionalProperties, at);
  }
}

function* inner(node: Node, at: string): Generator<string> {
  yield* rows(node, at);
  if (node.items !== undefined && node.items !== false && !('type' in node.items && node.items.type === 'string')) {
    yield* rows(node.items, `${at}[]`);
    for (const one of node.items.anyOf ?? []) yield* inner(one, `${at}[]`);
  }
  for (const one of node.anyOf ?? []) yield* inner(one, at);
}

const code = (value: unknown): string => `\`${typeof value === 'string' ? value : JSON.stringify(value)}\``;

function row(at: string, node: Node, must: boolean): string {
  const name = must ? `**\`${at}\`**` : `\`${at}\``;
  const words = [about(node), allowed(node)].filter((part) => part !== '').join(' ');
  const examples = (node.examples ?? []).map(code).join(', ');
  return `| ${name} | ${words.replaceAll('|', '\\|')} | ${examples.replaceAll('|', '\\|')} |`;
}

function about(node: Node): string {
  const own = node.description ?? '';
  if (own !== '') return own;
  return [...new Set((node.anyOf ?? []).map((one) => one.description ?? '').filter((text) => text !== ''))].join(
    '; or: ',
  );
}

function allowed(node: Node): string {
  const words = [node, ...(node.anyOf ?? [])].flatMap(
    (one) => one.enum ?? (one.const === undefined ? [] : [one.const]),
  );
  return words.length === 0 ? '' : `(${[...new Set(words.map(code))].join(' | ')})`;
}

export function referencePage(): string {
  const table = (kind: SchemaKind, title: string): string =>
    [
      `\n## ${title}\n`,
      '| key | what it says | examples |',
      '|---|---|---|',
      ...new Set(rows(jsonSchema(kind) as Node, '')),
      '',
    ].join('\n');
  return `${HEAD}${table('job', 'A job')}${table('shop', 'A shop')}`;
}

if (process.argv[1] === import.meta.filename) {
  const page = (name: string): string => join(import.meta.dirname, '../../examples', name);
  writeFileSync(page('reference.md'), referencePage());
  writeFileSync(page('messages.md'), messagesPage());
  writeFileSync(page('library.md'), libraryPage());
}
