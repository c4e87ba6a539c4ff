/** What is read of a tree's nodes: the same in a browser's DOM and in others. */
export interface XmlNode {
  readonly nodeType: number;
  readonly nodeName: string;
  readonly nodeValue: string | null;
  readonly attributes?: Iterable<{ readonly name: string; readonly value: string }>;
  readonly childNodes: Iterable<XmlNode>;
}

/** Of the DOM's kinds of nodes those that a tree of ours has. */
const ELEMENT = 1;
const TEXT = 3;

/** Elements that never hold anything and are closed in one tag. */
const EMPTY: ReadonlySet<string> = new Set(['line', 'path', 'rect', 'image']);

/**
 * The tree as XML 1.0: attributes in the order in which they were set, one element a line. What a platform makes of a
 * tree by itself differs from one to the next, and a browser's markup need not be XML.
 */
export function writeXml(root: XmlNode): string {
  const tags: string[] = [];
  add(root, tags);
  return tags.join('');
}

function add(node: XmlNode, tags: string[]): void {
  if (node.nodeType === TEXT && node.nodeValue) tags.push(escapedText(node.nodeValue));
  if (node.nodeType !== ELEMENT) return;
  const name = node.nodeName;
  let tag = `${apart(tags)}<${name}`;
  for (const attribute of node.attributes ?? []) tag += ` ${attribute.name}="${escapedAttribute(attribute.value)}"`;
  if (EMPTY.has(name)) tags.push(tag, '/>');
  else {
    tags.push(tag, '>');
    for (const child of node.childNodes) add(child, tags);
    tags.push(`${apart(tags)}</${name}>`);
  }
}

/** Between one tag and the next; no text ends with a bare `>`. */
const apart = (tags: readonly string[]): string => (tags.at(-1)?.endsWith('>') ? '\n' : '');

/** Controls and halves of pairs have no place in XML 1.0 (2.2), not even escaped: they are left out. */
const NO_PLACE = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

function escapedText(text: string): string {
  if (SAFE.test(text)) return text;
  return text.replaceAll(NO_PLACE, '').replaceAll(/[&<>"\r]/g, named);
}

/** A reader makes spaces of line breaks and tabs in attributes (3.3.3) unless they are written by number. */
const escapedAttribute = (text: string): string =>
  SAFE.test(text) ? text : escapedText(text).replaceAll(/[\t\n]/g, named);

/** Nearly all of them: printable ASCII without anything special. */
const SAFE = /^[ !#-%'-;=?-~]*$/;

const NAMES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

const named = (sign: string): string => NAMES[sign]!;
