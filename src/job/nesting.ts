import { MAX_DEPTH } from './bounds.ts';

/** The marks that the YAML lexer puts between the pieces of the text; they are no part of it. */
const DOCUMENT = '\u0002';
const FLOW_END = '\u0018';
const SCALAR = '\u001f';

/**
 * Follows the pieces of a YAML text and keeps count of the lists and maps that are open, so that nesting is known
 * before anything is built. Brackets are counted where they open something; block maps and lists by the columns
 * of their keys and dashes. The count is exact for well-formed text and never too low: a colon that opens no map
 * in truth (`a: b: c`) counts as one.
 */
export class NestingScan {
  #offset = 0;
  #column = 0;
  #flow = 0;
  /** The column where the node of this line begins, where one has begun since the line's start or indicator. */
  #node: number | undefined;
  #scalarNext = false;
  readonly #open: { readonly column: number; readonly kind: 'map' | 'list' }[] = [];

  /** The offset of the piece that nests too deep, or undefined. */
  next(piece: string): number | undefined {
    if (piece === SCALAR && !this.#scalarNext) {
      this.#scalarNext = true;
      return undefined;
    }
    if (this.#scalarNext) {
      this.#scalarNext = false;
      return this.#advance(piece, 'content');
    }
    switch (piece) {
      case DOCUMENT:
        this.#open.length = 0;
        return undefined;
      case FLOW_END:
        this.#flow = 0;
        return undefined;
      case '[':
      case '{':
        this.#flow += 1;
        return this.#advance(piece, 'content');
      case ']':
      case '}':
        this.#flow = Math.max(0, this.#flow - 1);
        return this.#advance(piece, 'content');
      case '-':
      case '?':
      case ':':
        return this.#advance(piece, this.#flow > 0 ? 'content' : 'indicator');
    }
    return this.#advance(piece, /^[ \t\r\n]*$/.test(piece) ? 'space' : 'content');
  }

  #advance(piece: string, what: 'content' | 'indicator' | 'space'): number | undefined {
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
    return this.#open.length + this.#flow > MAX_DEPTH ? start : undefined;
  }

  #indicate(piece: string): void {
    const kind = piece === '-' ? 'list' : 'map';
    const column = piece === ':' ? (this.#node ?? this.#column) : this.#column;
    this.#node = undefined;
    const open = this.#open;
    for (let top = open.at(-1); top !== undefined; top = open.at(-1)) {
      if (top.column < column) break;
      if (top.column === column && top.kind === kind) return;
      // A list may stand at the column of the key that holds it.
      if (top.column === column && top.kind === 'map') break;
      open.pop();
    }
    open.push({ column, kind });
  }
}
