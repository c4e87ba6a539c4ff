import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'rolldown';
import { parseSync } from 'rolldown/utils';

/** Files of functions, by the name of the file that holds them in the program. */
export type Seldom = Readonly<Record<string, readonly string[]>>;

/** In front of what stands in the place of a source, and of the file that holds some of them. */
export const STAND_IN = '\0stand-in:';
const HOLDER = '\0holder:';
/** Behind this a stand-in names its own source. */
const ITSELF = '\0itself:';

/**
 * Sources that few jobs come to: the program reads them when one of their functions is called for the first time, since
 * reading what is never run is a good part of a cold command. In the place of each stands one that fetches it: from the
 * first call on its names are the functions themselves. Sources of one file have one another without it.
 */
export function loadedWhenCalled(
  top: string,
  seldom: Seldom,
): { readonly input: Record<string, string>; readonly plugin: Plugin } {
  const places = new Map(
    Object.entries(seldom).flatMap(([holder, sources]) =>
      sources.map((source, i): [string, Place] => [join(top, source), { holder, alias: (name) => `${name}_${i}` }]),
    ),
  );
  return {
    input: Object.fromEntries(Object.keys(seldom).map((holder) => [holder, `${HOLDER}${holder}`])),
    plugin: {
      name: 'loaded-when-called',
      async resolveId(source, importer = '', options) {
        if (source.startsWith(HOLDER)) return source;
        if (source.startsWith(ITSELF)) return source.slice(ITSELF.length);
        if (source.startsWith(STAND_IN)) return { id: source.slice(STAND_IN.length), external: true };
        const found = await this.resolve(source, importer, { ...options, skipSelf: true });
        const place = found === null ? undefined : places.get(found.id);
        if (place === undefined) return found;
        const within = importer === `${HOLDER}${place.holder}` || places.get(importer)?.holder === place.holder;
        return within ? found : `${STAND_IN}${found!.id}`;
      },
      load(id) {
        if (id.startsWith(HOLDER)) return holderOf([...places].filter(([, { holder }]) => id === `${HOLDER}${holder}`));
        const place = id.startsWith(STAND_IN) ? places.get(id.slice(STAND_IN.length)) : undefined;
        return place === undefined ? null : { code: standInOf(id.slice(STAND_IN.length), place), moduleType: 'js' };
      },
    },
  };
}

type Program = ReturnType<typeof parseSync>['program'];
type Statement = Program['body'][number] | null;

interface Place {
  readonly holder: string;
  /** Sources of one holder may use the same word for two things. */
  readonly alias: (name: string) => string;
}

function holderOf(sources: readonly (readonly [string, Place])[]): string {
  return sources
    .map(([source, { alias }]) => {
      const names = exportsOf(source).functions.map((name) => `${name} as ${alias(name)}`);
      return `export { ${names.join(', ')} } from ${JSON.stringify(source)};`;
    })
    .join('\n');
}

/** What is no function comes from the source itself: whoever uses it, and not only hands it on, brings the source along. */
function standInOf(source: string, { holder, alias }: Place): string {
  const { functions, others } = exportsOf(source);
  const fetched = functions.map((name) => `${alias(name)}: ${name}`);
  const file = JSON.stringify(`${STAND_IN}./${holder}.js`);
  return [
    'let there = false;',
    `const fetched = () => { there = true; ({ ${fetched.join(', ')} } = require(${file})); };`,
    ...functions.map(
      (name) => `export let ${name} = (...given) => { if (!there) fetched(); return ${name}(...given); };`,
    ),
    others.length === 0 ? '' : `export { ${others.join(', ')} } from ${JSON.stringify(ITSELF + source)};`,
  ].join('\n');
}

interface Exports {
  readonly functions: readonly string[];
  readonly others: readonly string[];
}

function exportsOf(source: string): Exports {
  const { program, module } = parseSync(source, readFileSync(source, 'utf8'));
  const known = new Set(
    program.body.flatMap((statement) =>
      functionsIn(statement.type === 'ExportNamedDeclaration' ? statement.declaration : statement),
    ),
  );
  const exported = module.staticExports.flatMap(({ entries }) => entries.filter(({ isType }) => !isType));
  const names = exported.map(({ exportName, localName }) => {
    if (exportName.kind !== 'Name' || exportName.name === null) throw new Error(`${source} exports more than names`);
    return { name: exportName.name, isFunction: localName.name === exportName.name && known.has(exportName.name) };
  });
  return {
    functions: names.flatMap(({ name, isFunction }) => (isFunction ? [name] : [])),
    others: names.flatMap(({ name, isFunction }) => (isFunction ? [] : [name])),
  };
}

function functionsIn(statement: Statement): readonly string[] {
  if (statement?.type === 'FunctionDeclaration') return statement.id === null ? [] : [statement.id.name];
  if (statement?.type !== 'VariableDeclaration' || statement.kind !== 'const') return [];
  return statement.declarations.flatMap(({ id, init }) =>
    id.type === 'Identifier' && init?.type === 'ArrowFunctionExpression' ? [id.name] : [],
  );
}
