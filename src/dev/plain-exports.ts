import { parseSync, Visitor } from 'rolldown/utils';

type Call = Parameters<NonNullable<ConstructorParameters<typeof Visitor>[0]['CallExpression']>>[0];

interface Handed {
  readonly start: number;
  readonly end: number;
  readonly name: string;
  readonly value: string;
}

/**
 * What files give one another as values, not as functions that fetch them: these are called at each use, a hundred thousand times
 * for one pattern. They stand at the end of a file, when all is there; nothing that is exported is set again later, but for
 * what is fetched when it is called, which does the same before and after.
 */
export function plainExports(file: string, code: string): string {
  const handed: Handed[] = [];
  const see = (call: Call): void => {
    const found = handedBy(call, code);
    if (found !== undefined) handed.push({ start: call.start, end: call.end, ...found });
  };
  new Visitor({ CallExpression: see }).visit(parseSync(file, code, { sourceType: 'commonjs' }).program);
  const parts = handed.map(({ start, name, value }, i) => {
    return `${code.slice(handed[i - 1]?.end ?? 0, start)}exports.${name}=${value}`;
  });
  return [...parts, code.slice(handed.at(-1)?.end ?? 0)].join('');
}

/** `Object.defineProperty(exports, 'name', {enumerable, get: function() { return value; }})`, as the bundler writes it. */
function handedBy({ callee, arguments: given }: Call, code: string): Pick<Handed, 'name' | 'value'> | undefined {
  if (code.slice(callee.start, callee.end) !== 'Object.defineProperty') return undefined;
  const [target, name, how] = given;
  if (target?.type !== 'Identifier' || target.name !== 'exports' || how?.type !== 'ObjectExpression') return undefined;
  const getter = how.properties.find((each) => {
    return each.type === 'Property' && each.key.type === 'Identifier' && each.key.name === 'get';
  });
  const body = getter?.type === 'Property' && getter.value.type === 'FunctionExpression' ? getter.value.body?.body : [];
  const [fetch] = body ?? [];
  const value = fetch?.type === 'ReturnStatement' ? fetch.argument : null;
  if (name === undefined || value?.type !== 'Identifier') return undefined;
  return { name: code.slice(name.start + 1, name.end - 1), value: value.name };
}
