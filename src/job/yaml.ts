import { Composer, type Document, isScalar, Lexer, Parser } from 'yaml';
import { MAX_PIECES } from './bounds.ts';
import type { Complain } from './complaints.ts';
import { emptyMap, type Node } from './node.ts';
import { YamlScan } from './yaml-scan.ts';
import { yamlTree } from './yaml-tree.ts';
import { wordsFor } from './yaml-words.ts';

/**
 * Reads YAML 1.2 (core schema) that was found short enough. What is no value in a job (null, tags, merge keys …) is
 * told and stands as a refused node. Undefined where the text cannot be read as YAML at all.
 */
export function readYaml(text: string, complain: Complain): Node | undefined {
  const pieces = cut(text, complain);
  const document = pieces === undefined ? undefined : compose(pieces, text.length, complain);
  if (document === undefined) return undefined;
  const { contents } = document;
  const empty = contents === null || (isScalar(contents) && contents.value === null && contents.source === '');
  return empty ? emptyMap(0) : yamlTree(contents, text, complain);
}

/** The pieces of the text, or undefined where they are too many or something is wrong with one. */
function cut(text: string, complain: Complain): readonly string[] | undefined {
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
  if (wrong === undefined) return pieces;
  complain(wrong.code, wrong.at, wrong.message, wrong.hint);
  return undefined;
}

/** The one document, or undefined with the reasons why it cannot be read. */
function compose(pieces: readonly string[], length: number, complain: Complain): Document.Parsed | undefined {
  const parser = new Parser();
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, keepSourceTokens: false });
  let directive: number | undefined;
  const tokens = function* () {
    for (const piece of [...pieces, undefined]) {
      for (const token of piece === undefined ? parser.end() : parser.next(piece)) {
        if (token.type === 'directive' && !/^%YAML[ \t]+1\.2[ \t]*$/.test(token.source)) directive ??= token.offset;
        yield token;
      }
    }
  };
  const documents = [...composer.compose(tokens(), true, length)];
  if (directive !== undefined) {
    complain('yaml-directive', directive, 'the file has a YAML directive', 'take the line that begins with % out');
    return undefined;
  }
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
