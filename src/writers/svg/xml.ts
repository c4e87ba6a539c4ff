import { TextBytes } from '../text-bytes.ts';

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

export type { Xml };
/** What a file is made of, put in its order. */
export type Adding = (xml: Xml) => void;

/** What is added, as one text. */
export function xmlText(add: Adding): string {
  const parts: string[] = [];
  written(add, (part) => parts.push(part));
  return parts.join('');
}

/** The same in UTF-8: the text itself never stands there whole. */
export function xmlBytes(add: Adding): Uint8Array {
  const text = new TextBytes();
  written(add, (part) => text.add(part));
  return text.bytes();
}

function written(add: Adding, take: (part: string) => void): void {
  const xml = new Xml(take);
  add(xml);
  xml.end();
}

/** Characters that are given on together. */
const PART = 2 ** 16;

/**
 * XML 1.0 as it grows: attributes in the order in which they were set, one element a line. What a platform makes of a
 * tree by itself differs from one to the next, and a browser's markup need not be XML. What is added is text from then on,
 * so a tree need never stand there whole.
 */
class Xml {
  private tags: string[] = [];
  private length = 0;
  /** The one before ended as a tag does; no text ends with a bare `>`. */
  private afterTag = false;

  constructor(private readonly take: (part: string) => void) {}

  /** An element with all that is in it. */
  add(node: XmlNode): void {
    if (node.nodeType === TEXT && node.nodeValue) this.put(escapedText(node.nodeValue), false);
    if (node.nodeType !== ELEMENT) return;
    if (EMPTY.has(node.nodeName)) this.begin(node, '/>');
    else {
      this.open(node);
      this.close(node.nodeName);
    }
  }

  /** An element with what is in it so far: more is added, then it is closed. */
  open(node: XmlNode): void {
    this.begin(node, '>');
    for (const child of node.childNodes) this.add(child);
  }

  close(name: string): void {
    this.put(`${this.afterTag ? '\n' : ''}</${name}>`, true);
  }

  /** A file ends with a line. */
  end(): void {
    this.put('\n', false);
    this.give();
  }

  private begin(node: XmlNode, end: string): void {
    let tag = `${this.afterTag ? '\n' : ''}<${node.nodeName}`;
    for (const { name, value } of node.attributes ?? []) tag += ` ${name}="${escapedAttribute(value)}"`;
    this.put(tag + end, true);
  }

  private put(text: string, isTag: boolean): void {
    this.tags.push(text);
    this.length += text.length;
    this.afterTag = isTag;
    if (this.length > PART) this.give();
  }

  private give(): void {
    this.take(this.tags.join(''));
    this.tags = [];
    this.length = 0;
  }
}

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
