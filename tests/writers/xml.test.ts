import { expect, test } from 'vitest';
import { type XmlNode, xmlBytes, xmlText } from '../../src/writers/svg/xml.ts';

/** As the one text of a file, which ends with a line. */
const writeXml = (root: XmlNode): string => xmlText((xml) => xml.add(root)).replace(/\n$/, '');

const text = (nodeValue: string): XmlNode => ({ nodeType: 3, nodeName: '#text', nodeValue, childNodes: [] });
const element = (
  nodeName: string,
  attributes: Readonly<Record<string, string>>,
  ...childNodes: XmlNode[]
): XmlNode => ({
  nodeType: 1,
  nodeName,
  nodeValue: null,
  attributes: Object.entries(attributes).map(([name, value]) => ({ name, value })),
  childNodes,
});

test('one element a line, attributes in the order in which they were set', () => {
  const tree = element('svg', { width: '1', height: '2' }, element('g', { id: 'b', class: 'a' }, element('line', {})));
  expect(writeXml(tree)).toBe('<svg width="1" height="2">\n<g id="b" class="a">\n<line/>\n</g>\n</svg>');
});

test('what XML takes for its own is escaped, in text and in attributes', () => {
  const said = `a<b>&"c"'d'`;
  expect(writeXml(element('title', { label: said }, text(said)))).toBe(
    "<title label=\"a&lt;b&gt;&amp;&quot;c&quot;'d'\">a&lt;b&gt;&amp;&quot;c&quot;'d'</title>",
  );
});

test('line breaks survive a reader', () => {
  expect(writeXml(element('desc', { label: 'a\tb\nc\rd' }, text('a\tb\nc\rd')))).toBe(
    '<desc label="a&#9;b&#10;c&#13;d">a\tb\nc&#13;d</desc>',
  );
});

test('what has no place in XML at all is left out', () => {
  expect(writeXml(element('desc', {}, text('a\u0001b\ud800c\uffffd\u{1f600}é')))).toBe('<desc>abcd\u{1f600}é</desc>');
});

test('comments and the like, which nobody asked for, are left out', () => {
  expect(writeXml(element('g', {}, { ...text('no'), nodeType: 8, nodeName: '#comment' }))).toBe('<g>\n</g>');
});

test('as bytes it is the same, in whatever parts it was written; a file ends with a line', () => {
  // Longer than one part, with letters of one, two, three and four bytes.
  const lines = Array.from({ length: 20_000 }, (_, i) => element('line', { id: `é${i}⅜😀` }));
  const add = (xml: Parameters<Parameters<typeof xmlText>[0]>[0]): void => {
    xml.open(element('svg', {}));
    for (const line of lines) xml.add(line);
    xml.close('svg');
  };
  const whole = `<svg>\n${lines.map((_, i) => `<line id="é${i}⅜😀"/>\n`).join('')}</svg>\n`;
  expect(xmlText(add)).toBe(whole);
  expect(Buffer.from(xmlBytes(add)).equals(Buffer.from(whole))).toBe(true);
});
