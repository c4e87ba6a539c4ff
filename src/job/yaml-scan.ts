import { MAX_DEPTH } from './bounds.ts';
import { TOO_DEEP } from './complaints.ts';

/** The marks that the YAML lexer puts between the pieces of the text; they are no part of it. */
const DOCUMENT = '\u0002';
const FLOW_END = '\u0018';
const SCALAR = '\u001f';

/** What is wrong with a piece, and where, in plain words. */
export interface Wrong {
  readonly at: number;
  readonly code: string;
  readonly message: string;
  readonly hint: string;
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
 * Nesting is counted by brackets in flow style, and by the columns of keys and dashes in block style. The count is
 * exact for well-formed text and never too low: a colon that opens no map in truth (`a: b: c`) counts as one.
 */
export class YamlScan {
  #offset = 0;
  #column = 0;
  /** The column where the node of this line begins, where one has begun since the line's start or indicator. */
  #node: number | undefined;
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
    const start = this.#offset;
    if (what === 'content') this.#node ??= this.#column;
    if (what === 'indicator') this.#indicate(piece);
    this.#offset += piece.length;
    const lineFeed = piece.lastIndexOf('\n');
    if (lineFeed === -1) {
      this.#column += piece.length;
    } else {
      this.#column = piece.length - lineFeed - 1;
      this.#node = undefined;
    }
    if (this.#blocks.length + this.#brackets.length <= MAX_DEPTH) return undefined;
    return { at: start, ...TOO_DEEP };
  }

  #indicate(piece: string): void {
    const kind = piece === '-' ? 'list' : 'map';
    const column = piece === ':' ? (this.#node ?? this.#column) : this.#column;
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

const CLOSE = { '[': ']', '{': '}' } as const;

export const COLOUR_HINT = 'put a colour in quotes: "#efe9dc"';

/** The escapes of YAML 1.2 (§5.7). */
const ESCAPE = /\\(?:[0abefnrtvN_LP "/\\\t\r\n]|x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U00(?:0[0-9a-fA-F]|10)[0-9a-fA-F]{4})/y;

function wrongQuotes(piece: string, offset: number): Wrong | undefined {
  const mark = piece[0]!;
  let closed = false;
  if (mark === "'") {
    closed = piece.length > 1 && (piece.split("'").length - 1) % 2 === 0;
  } else {
    let at = piece.indexOf('\\');
    while (at !== -1) {
      ESCAPE.lastIndex = at;
      if (!ESCAPE.test(piece)) {
        const hint = 'write two backslashes for one, or use single quotes';
        return { at: offset + at, code: 'yaml-escape', message: 'this backslash begins no known escape', hint };
      }
      closed = ESCAPE.lastIndex < piece.length;
      at = piece.indexOf('\\', ESCAPE.lastIndex);
    }
    closed = piece.length > 1 && piece.endsWith('"') && (closed || !piece.includes('\\'));
  }
  if (closed) return undefined;
  const hint = `close it with ${mark}; a text with an inch mark stands in single quotes: '5/8"'`;
  return { at: offset, code: 'yaml-quotes', message: `this ${mark} opens a text that is never closed`, hint };
}
