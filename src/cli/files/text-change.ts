import type { Piece } from './plan.ts';

/** A file that people write in, as it was read and as it is to be. */
export interface TextChange {
  readonly file: string;
  /** Undefined where there is none yet, and must be none. */
  readonly before: string | undefined;
  readonly after: string;
}

export function pieceOf({ file, before, after }: TextChange): Piece {
  const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
  return { file, bytes: encode(after), was: before === undefined ? null : encode(before) };
}
