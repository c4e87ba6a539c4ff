/**
 * The page of the library, from the comments of everything that `src/index.ts` exports: functions with their types as they
 * are written, values, and types with their fields. A test compares the page with the sources.
 */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from '@babel/parser';

const FACE = join(import.meta.dirname, '../index.ts');

type Statement = ReturnType<typeof parse>['program']['body'][number];

/** A module as it was read: its text, and what stands at its top. */
interface Module {
  readonly text: string;
  readonly body: readonly Statement[];
}

function read(file: string): Module {
  const text = readFileSync(file, 'utf8');
  return { text, body: parse(text, { sourceType: 'module', plugins: ['typescript'] }).program.body };
}

/** What is exported: its name, what its comment says, and its declaration without any body. */
export interface Exported {
  readonly name: string;
  readonly kind: 'function' | 'value' | 'type';
  readonly about: string;
  readonly code: string;
}

/** The words of the comment right before a statement. */
function aboutOf({ leadingComments }: Statement): string {
  const last = leadingComments?.at(-1);
  if (last?.type !== 'CommentBlock' || !last.value.startsWith('*')) return '';
  return last.value
    .replaceAll(/^\s*\*+ ?/gm, '')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

function declared({ text, body }: Module, name: string): Exported {
  for (const statement of body) {
    if (statement.type !== 'ExportNamedDeclaration' || statement.declaration == null) continue;
    const { declaration } = statement;
    const cut = (end: number): string => text.slice(declaration.start!, end).trim();
    const about = aboutOf(statement);
    if (declaration.type === 'VariableDeclaration') {
      const [one] = declaration.declarations;
      if (one?.id.type !== 'Identifier' || one.id.name !== name) continue;
      const { init } = one;
      if (init?.type === 'ArrowFunctionExpression') {
        return { name, kind: 'function', about, code: cut(init.body.start!).replace(/\s*=>\s*$/, '') };
      }
      const typed = one.id.typeAnnotation == null ? declaration.end! : one.id.end!;
      return { name, kind: 'value', about, code: cut(typed) };
    }
    if (!('id' in declaration) || declaration.id?.type !== 'Identifier' || declaration.id.name !== name) continue;
    if (declaration.type === 'FunctionDeclaration')
      return { name, kind: 'function', about, code: cut(declaration.body.start!) };
    return { name, kind: 'type', about, code: cut(declaration.end!) };
  }
  throw new Error(`${name} is exported, but not declared where it is said to be`);
}

/** Everything that the face exports, in the order of its names. */
export function exported(): readonly Exported[] {
  const face = read(FACE);
  return face.body
    .flatMap((statement): readonly Exported[] => {
      if (statement.type !== 'ExportNamedDeclaration') return [];
      const { declaration, source } = statement;
      if (declaration?.type === 'VariableDeclaration') {
        return declaration.declarations.flatMap(({ id }) =>
          id.type === 'Identifier' ? [declared(face, id.name)] : [],
        );
      }
      if (source == null) return [];
      const module = read(join(dirname(FACE), source.value));
      return statement.specifiers.flatMap(({ exported: name }) =>
        name.type === 'Identifier' ? [declared(module, name.name)] : [],
      );
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

const HEAD = `# The library: what programs can call

Generated from the comments beside the code (\`npm run reference\`). \`import { … } from 'matwright'\` has all of it, in Node and in
browsers; workers import \`matwright/worker\`. Lengths are mm, y runs down, and boxes and sizes have \`width\` and \`height\`. A call
throws nothing for wrong input: it gives a \`Result\`, either \`{ok: true, value, warnings}\` or \`{ok: false, problems}\`, and
\`showProblem\` makes a line of each. What codes mean stands in [messages.md](messages.md), what a job and a shop may hold in
[reference.md](reference.md); [script/](script) is a program that uses it.
`;

const TITLES = { function: 'Functions', value: 'Values', type: 'Types' } as const;

export function libraryPage(): string {
  const all = exported();
  const sections = (['function', 'value', 'type'] as const).map((kind) => {
    const own = all
      .filter((each) => each.kind === kind)
      .map(({ name, about, code }) => [`### ${name}`, ...(about === '' ? [] : [about]), `\`\`\`ts\n${code}\n\`\`\``]);
    return [`## ${TITLES[kind]}`, ...own.flat()].join('\n\n');
  });
  return `${HEAD}\n${sections.join('\n\n')}\n`;
}
