import { afterLine, columnOf, endOf, type Ranged, within } from './edit-text.ts';
import type { EditPath, Found } from './find-node.ts';
import { asLines, isMapping, keyText, onOneLine, type Plain, type Style } from './yaml-print.ts';

/** An empty list has nothing to stand below its key. */
export const isListOfMaps = (value: Plain): value is readonly { readonly [key: string]: Plain }[] =>
  Array.isArray(value) && value.length > 0 && value.every(isMapping);

/** A list's item, on one line where it holds no lists of maps itself. */
export function itemLines(value: { readonly [key: string]: Plain }, indent: string): readonly string[] {
  const nested = Object.values(value).some((part) => Array.isArray(part) && part.some(isMapping));
  if (!nested) return [`${indent}- ${onOneLine(value, 'yaml')}`];
  return asLines(value, `${indent}  `).map((line, i) =>
    i === 0 ? `${indent}- ${line.slice(indent.length + 2)}` : line,
  );
}

/** A new key, with whatever leads to it, at the end of the map that lacks it. */
export function insert(
  text: string,
  found: Exclude<Found, undefined>,
  path: EditPath,
  value: Plain,
  style: Style,
): string | undefined {
  if (found.kind === 'node') return undefined;
  // What is missing are keys: a place in a list that is not there is never found.
  const steps = path.slice(found.kind === 'missing' ? found.depth : 0).map(String);
  if (found.kind === 'missing' && found.map.flow === true) {
    const nested = steps.slice(1).reduceRight<Plain>((inner, key) => ({ [key]: inner }), value);
    return within(text, found.map, `${keyText(steps[0]!, style)}: ${onOneLine(nested, style)}`);
  }
  const first = found.kind === 'missing' ? (found.map.items[0]!.key as Ranged).range![0] : undefined;
  const indent = ' '.repeat(first === undefined ? 0 : columnOf(text, first));
  const lines = steps.slice(0, -1).map((key, i) => `${indent}${'  '.repeat(i)}${keyText(key, style)}:`);
  const deepest = `${indent}${'  '.repeat(steps.length - 1)}`;
  const name = `${deepest}${keyText(steps.at(-1)!, style)}:`;
  if (isListOfMaps(value)) {
    lines.push(name, ...value.flatMap((item) => itemLines(item, `${deepest}  `)));
  } else lines.push(`${name} ${onOneLine(value, style)}`);
  return afterLine(text, found.kind === 'missing' ? endOf(found.map) : text.length, lines);
}
