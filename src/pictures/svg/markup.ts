import { Unreadable } from '../model.ts';

/** An element as it is written, with the line that it begins on. */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly Element[];
  readonly line: number;
  /** What stands in it beside its children. */
  readonly text: string;
}

const MOST_ELEMENTS = 5000;
const DEEPEST = 64;

/** What begins with `<`, or the text up to the next of them. What none of these begin is broken. */
const PIECE =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!\[CDATA\[(?<plain>[\s\S]*?)\]\]>|<!DOCTYPE(?<doctype>[^>[]*)>|<\/(?<end>[^\s>]+)\s*>|<(?<begin>[A-Za-z_][^\s/>]*)(?<given>(?:\s+[^\s=/>]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(?<closed>\/?)>|(?<text>[^<]+)/y;
const GIVEN = /([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

export const broken = (line: number, message: string, hint: string): Unreadable =>
  new Unreadable('mark-svg', `line ${line}: ${message}`, hint);

/**
 * The root element of an XML text (XML 1.0). Entities of its own are not known, and nothing outside of the text is looked up.
 * Throws `mark-svg`.
 */
export function readMarkup(text: string): Element {
  interface Open extends Omit<Element, 'children'> {
    readonly children: Element[];
    text: string;
  }
  const document: Open = { name: '', attributes: new Map(), children: [], line: 1, text: '' };
  const open: Open[] = [document];
  let [at, line, count] = [0, 1, 0];
  while (at < text.length) {
    PIECE.lastIndex = at;
    const found = PIECE.exec(text);
    if (found === null) throw broken(line, 'this is no proper XML', 'save the file again as plain SVG');
    const { plain, end, begin, given = '', closed, text: words } = found.groups!;
    const last = open.at(-1)!;
    if (begin !== undefined) {
      count += 1;
      if (count > MOST_ELEMENTS || open.length > DEEPEST)
        throw broken(
          line,
          `there are more than ${MOST_ELEMENTS} elements, or ${DEEPEST} in one another`,
          'simplify it',
        );
      const element: Open = { name: begin, attributes: attributesOf(given, line), children: [], line, text: '' };
      last.children.push(element);
      if (closed === '') open.push(element);
    } else if (end !== undefined) {
      if (last.name !== end || open.length === 1)
        throw broken(line, `</${end}> ends nothing that is open`, 'save the file again as plain SVG');
      open.pop();
    } else last.text += plain ?? words ?? '';
    line += found[0].split('\n').length - 1;
    at = PIECE.lastIndex;
  }
  const [root, ...others] = document.children;
  if (root === undefined || others.length > 0 || open.length > 1)
    throw broken(line, 'the file ends too early, or holds several pictures', 'save it again as plain SVG');
  return root;
}

function attributesOf(given: string, line: number): ReadonlyMap<string, string> {
  const attributes = new Map<string, string>();
  for (const [, name, double, single] of given.matchAll(GIVEN))
    attributes.set(name!, plainText(double ?? single!, line));
  return attributes;
}

const plainText = (text: string, line: number): string =>
  text.replace(/&([^;\s]*);?/g, (_, name: string) => {
    const code = /^#(?:x([0-9a-f]{1,6})|(\d{1,7}))$/i.exec(name);
    const point = code === null ? undefined : Number.parseInt(code[1] ?? code[2]!, code[1] === undefined ? 10 : 16);
    const known = point === undefined || point > 0x10ffff ? ENTITIES[name] : String.fromCodePoint(point);
    if (known === undefined) throw broken(line, `&${name}; is not known`, 'save the file again as plain SVG');
    return known;
  });
