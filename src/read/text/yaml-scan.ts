import { MAX_DEPTH } from './bounds.ts';
import { TOO_DEEP } from './complaints.ts';
import { wrongQuotes } from './yaml-quotes.ts';
import { type Words, wordsFor } from './yaml-words.ts';

/** The marks that the YAML lexer puts between the pieces of the text; they are no part of it. */
const DOCUMENT = '\u0002';
const FLOW_END = '\u0018';
const SCALAR = '\u001f';

/** What is wrong with a piece, and where. */
export interface Wrong extends Words {
  readonly at: number;
}

interface Spot {
  readonly at: number;
  readonly line: number;
  readonly column: number;
}

interface Bracket {
  readonly at: number;
  readonly open: '[' | '{';
}

/**
 * Follows the pieces of a YAML text before anything is built of them: how deep lists and maps nest, whether brackets
 * and quotes are closed, whether escapes are known. The library tells the same later, less plainly, and once for each
 * of a hundred thousand; deep nesting it does not survive.
 *
 * Nesting is counted by brackets in flow style, and by the columns of keys and hyphens in block style.
 */
export class YamlScan {
  #offset = 0;
  #line = 0;
  #column = 0;
  /** Where the node begins that ends on this line, where one has begun since the last line end or indicator. */
  #node: Spot | undefined;
  /** Whether a key and its colon stand on this line. */
  #keyed = false;
  /** The text of that node, and the piece before this one. */
  #nodeText = '';
  #before = '';
  /** What is no fault, but may be another thing than was meant. */
  readonly doubts: Wrong[] = [];
  #scalarNext = false;
  readonly #brackets: Bracket[] = [];
  /** A comment within brackets that looks like a colour. */
  #colour: number | undefined;
  readonly #blocks: { readonly column: number; readonly kind: 'map' | 'list' }[] = [];

  next(piece: string): Wrong | undefined {
    if (this.#scalarNext) {
      this.#scalarNext = false;
      return this.#advance(piece, 'content');
    }
    switch (piece) {
      case SCALAR:
        this.#scalarNext = true;
        return undefined;
      case DOCUMENT:
        this.#blocks.length = 0;
        return undefined;
      case FLOW_END: {
        const bracket = this.#brackets.at(-1)!;
        const message = `this ${bracket.open} is not closed before a line that is indented no deeper than its key`;
        return this.#unclosed(bracket, message);
      }
      case '[':
      case '{':
        this.#brackets.push({ at: this.#offset, open: piece });
        return this.#advance(piece, 'content');
      case ']':
      case '}':
        return this.#close(piece) ?? this.#advance(piece, 'content');
      case '-':
      case '?':
      case ':':
        return this.#advance(piece, this.#brackets.length > 0 ? 'content' : 'indicator');
    }
    if (piece.startsWith('"') || piece.startsWith("'")) {
      const wrong = wrongQuotes(piece, this.#offset);
      if (wrong !== undefined) return wrong;
    }
    if (/^#[^\s#]/.test(piece) && this.#keyed && /[A-Za-z]{3}/.test(this.#nodeText) && !/^["']/.test(this.#nodeText))
      this.doubts.push({ at: this.#offset, ...wordsFor('COMMENT_BEHIND_TEXT', '') });
    if (this.#brackets.length > 0 && /^#[0-9a-fA-F]{3,8}\b/.test(piece)) this.#colour ??= this.#offset;
    return this.#advance(piece, /^[ \t\r\n]*$/.test(piece) ? 'space' : 'content');
  }

  /** At the end of the text. */
  end(): Wrong | undefined {
    const bracket = this.#brackets.at(-1);
    return bracket === undefined ? undefined : this.#unclosed(bracket, `this ${bracket.open} is never closed`);
  }

  #unclosed({ at, open }: Bracket, message: string): Wrong {
    if (this.#colour !== undefined) {
      const comment = 'what follows this # is a comment, and a bracket stays open before it';
      return { at: this.#colour, code: 'yaml-brackets', message: comment, hint: COLOUR_HINT };
    }
    const hint = `put ${CLOSE[open]} at its end, and indent the lines within deeper than its key`;
    return { at, code: 'yaml-brackets', message, hint };
  }

  #close(piece: ']' | '}'): Wrong | undefined {
    const bracket = this.#brackets.pop();
    if (bracket !== undefined && CLOSE[bracket.open] === piece) return undefined;
    const message =
      bracket === undefined
        ? `this ${piece} closes nothing`
        : `this ${piece} stands where ${CLOSE[bracket.open]} is expected`;
    return { at: this.#offset, code: 'yaml-brackets', message, hint: 'make the brackets match' };
  }

  #advance(piece: string, what: 'content' | 'indicator' | 'space'): Wrong | undefined {
    const here: Spot = { at: this.#offset, line: this.#line, column: this.#column };
    if (what === 'content' && this.#node === undefined) [this.#node, this.#nodeText] = [here, piece];
    if (what === 'indicator') {
      if (piece === ':' && this.#keyed && this.#node !== undefined && this.#node.line !== this.#line)
        return { at: this.#lineBegins(), ...wordsFor('BAD_INDENT', '') };
      if (this.#keyed || (piece !== ':' && this.#node !== undefined)) return secondOnLine(piece, this.#node ?? here);
      if (this.#node !== undefined && this.#node.line !== this.#line) {
        return { at: this.#node.at, ...noSpace(this.#nodeText) };
      }
      this.#indicate(piece, here);
    }
    this.#move(piece);
    if (this.#blocks.length + this.#brackets.length <= MAX_DEPTH) return undefined;
    return { at: here.at, ...TOO_DEEP };
  }

  /** Where the line that a piece of several lines ends on begins, after its indent. */
  #lineBegins(): number {
    const tail = this.#before.slice(this.#before.lastIndexOf('\n') + 1);
    return this.#offset - tail.trimStart().length;
  }

  #move(piece: string): void {
    this.#before = piece;
    this.#offset += piece.length;
    this.#column += piece.length;
    for (let at = piece.indexOf('\n'); at !== -1; at = piece.indexOf('\n', at + 1)) {
      this.#line += 1;
      this.#column = piece.length - at - 1;
    }
    if (!piece.endsWith('\n') || this.#brackets.length > 0) return;
    this.#node = undefined;
    this.#keyed = false;
  }

  #indicate(piece: string, here: Spot): void {
    const kind = piece === '-' ? 'list' : 'map';
    this.#keyed = piece === ':' && this.#node !== undefined;
    const { column } = piece === ':' ? (this.#node ?? here) : here;
    this.#node = undefined;
    const blocks = this.#blocks;
    for (let top = blocks.at(-1); top !== undefined; top = blocks.at(-1)) {
      if (top.column < column) break;
      if (top.column === column && top.kind === kind) return;
      // A list may stand at the column of the key that holds it.
      if (top.column === column && top.kind === 'map') break;
      blocks.pop();
    }
    blocks.push({ column, kind });
  }
}

/** A key in a line without its colon, or with one that no space follows. */
function noSpace(text: string): Words {
  const [, key, value] = /^([A-Za-z]\w*):(\S[^\n]*)/.exec(text) ?? [];
  const words = wordsFor('MULTILINE_IMPLICIT_KEY', '');
  if (key === undefined) return words;
  return { ...words, message: 'a space is missing after the colon', hint: `write ${key}: ${value?.trim()}` };
}

/** Block style within block style needs a line of its own; the library nests it without end before it complains. */
function secondOnLine(piece: string, { at }: Spot): Wrong {
  if (piece === ':') return { at, ...wordsFor('BLOCK_AS_IMPLICIT_KEY', '') };
  const hint = 'begin the list on the next line, or put the text in quotes';
  return { at, code: 'yaml-colon', message: `a ${piece} stands behind something else on its line`, hint };
}

const CLOSE = { '[': ']', '{': '}' } as const;

export const COLOUR_HINT = 'put a colour in quotes: "#efe9dc"';
