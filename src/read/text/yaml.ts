import { Composer, type CST, type Document, isScalar, Lexer, Parser } from 'yaml';
import { MAX_DEPTH, MAX_PIECES } from './bounds.ts';
import { type Complain, TOO_DEEP } from './complaints.ts';
import { emptyMap, type Node } from './node.ts';
import { YamlScan } from './yaml-scan.ts';
import { yamlTree } from './yaml-tree.ts';
import { wordsFor } from './yaml-words.ts';

/**
 * Reads YAML 1.2 (core schema) that was found short enough. What is no value in a job (null, tags, merge keys …) is
 * told and stands as a refused node. Undefined where the text cannot be read as YAML at all.
 */
export function readYaml(text: string, complain: Complain, doubt: Complain): Node | undefined {
  const pieces = cut(text, complain, doubt);
  const document = pieces === undefined ? undefined : compose(pieces, text.length, complain);
  if (document === undefined) return undefined;
  const { contents } = document;
  const empty = contents === null || (isScalar(contents) && contents.value === null && contents.source === '');
  return empty ? emptyMap(0) : yamlTree(contents, text, complain);
}

/** The pieces of the text, or undefined where they are too many or something is wrong with one. */
function cut(text: string, complain: Complain, doubt: Complain): readonly string[] | undefined {
  const pieces: string[] = [];
  const scan = new YamlScan();
  for (const piece of new Lexer().lex(text)) {
    const wrong = scan.next(piece);
    if (wrong !== undefined) {
      complain(wrong.code, wrong.at, wrong.message, wrong.hint);
      return undefined;
    }
    pieces.push(piece);
    if (pieces.length > MAX_PIECES) {
      const message = 'the file holds far more than a job or a shop does';
      complain('text-too-many-values', 0, message, 'is this the right file?');
      return undefined;
    }
  }
  const wrong = scan.end();
  for (const { code, at, message, hint } of scan.doubts) doubt(code, at, message, hint);
  if (wrong === undefined) return pieces;
  complain(wrong.code, wrong.at, wrong.message, wrong.hint);
  return undefined;
}

/** The one document, or undefined with the reasons why it cannot be read. */
function compose(pieces: readonly string[], length: number, complain: Complain): Document.Parsed | undefined {
  const tokens = parse(pieces);
  const directive = tokens.find((token) => token.type === 'directive' && !VERSION.test(token.source));
  if (directive !== undefined) {
    const message = 'the file has a YAML directive';
    complain('yaml-directive', directive.offset, message, 'take the line that begins with % out');
    return undefined;
  }
  const deep = tokens.map(deepest).find((at) => at !== undefined);
  if (deep !== undefined) {
    complain(TOO_DEEP.code, deep, TOO_DEEP.message, TOO_DEEP.hint);
    return undefined;
  }
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, keepSourceTokens: false });
  const documents = [...composer.compose(tokens, true, length)];
  const errors = documents.flatMap((document) => document.errors);
  for (const { code, message, pos } of errors) {
    const words = wordsFor(code, message);
    complain(words.code, pos[0], words.message, words.hint);
  }
  const [first, second] = documents;
  if (second !== undefined && errors.length === 0) {
    complain('yaml-documents', second.range[0], 'the file holds several documents', 'keep one to a file');
  }
  return errors.length > 0 || second !== undefined ? undefined : first;
}

const VERSION = /^%YAML[ \t]+1\.2[ \t]*$/;

function parse(pieces: readonly string[]): readonly CST.Token[] {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  for (const piece of pieces) tokens.push(...parser.next(piece));
  return [...tokens, ...parser.end()];
}

/**
 * Where a token nests deeper than is allowed. In a malformed text lists and maps may lie within one another that stand
 * beside one another on the page, which the scan cannot know. The walk keeps its own stack: the tree may be deep.
 */
function deepest(root: CST.Token): number | undefined {
  const open: (readonly [token: CST.Token, depth: number])[] = [[root, 0]];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [token, above] = next;
    if (token.type === 'document' && token.value !== undefined) open.push([token.value, above]);
    if (!('items' in token)) continue;
    if (above === MAX_DEPTH) return token.offset;
    for (const { key, value } of token.items) {
      if (key) open.push([key, above + 1]);
      if (value) open.push([value, above + 1]);
    }
  }
  return undefined;
}
