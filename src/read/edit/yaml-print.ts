import { parse } from 'yaml';

/** What is written into a file: numbers, texts, and lists and maps of them. */
export type Plain = number | string | boolean | readonly Plain[] | { readonly [key: string]: Plain };

/** How a file writes its values. */
export type Style = 'yaml' | 'json';

const isList = (value: Plain): value is readonly Plain[] => Array.isArray(value);
export const isMapping = (value: Plain): value is { readonly [key: string]: Plain } =>
  typeof value === 'object' && !isList(value);

/** On one line: `{thickness: 1.4 mm, offset: -1.2 mm}`. Texts are quoted only where they would be read as something else. */
export function onOneLine(value: Plain, style: Style): string {
  if (isList(value)) return `[${value.map((item) => onOneLine(item, style)).join(', ')}]`;
  if (isMapping(value)) {
    return `{${Object.entries(value)
      .map(([key, item]) => `${keyText(key, style)}: ${onOneLine(item, style)}`)
      .join(', ')}}`;
  }
  if (typeof value !== 'string') return String(value);
  return style === 'yaml' && readsAsItself(value) ? value : JSON.stringify(value);
}

export const keyText = (key: string, style: Style): string => onOneLine(key, style);

/** Within brackets, where most signs mean something. */
function readsAsItself(text: string): boolean {
  if (!/^[\p{L}\p{N}-][\p{L}\p{N} .,;/+±°%()_-]*$/u.test(text) || /[,]|[ -]$|^-(?!\d)/u.test(text)) return false;
  return parse(`[${text}]`, { version: '1.2', schema: 'core' })[0] === text;
}

/** A text behind a key on a line of its own, where only few signs mean something. */
export function readsAsItselfInLine(text: string): boolean {
  if (!/^[\p{L}\p{N}][\p{L}\p{M}\p{N}\p{P}\p{S} ]*$/u.test(text) || / $|: |:$| #/.test(text)) return false;
  return (parse(`a: ${text}`, { version: '1.2', schema: 'core' }) as { readonly a: unknown }).a === text;
}

/** A map as lines, lists of maps below their key with one item a line; every line begins with `indent`. */
export function asLines(value: { readonly [key: string]: Plain }, indent: string): readonly string[] {
  return Object.entries(value).flatMap(([key, item]) => {
    const name = `${indent}${keyText(key, 'yaml')}:`;
    if (!isList(item) || !item.some(isMapping)) return [`${name} ${onOneLine(item, 'yaml')}`];
    return [name, ...item.map((part) => `${indent}  - ${onOneLine(part, 'yaml')}`)];
  });
}
