/** A text in UTF-8 that is added part by part: as text it never stands there whole. */
export class TextBytes {
  readonly #encoder = new TextEncoder();
  readonly #parts: Uint8Array[] = [];

  add(part: string): void {
    this.#parts.push(this.#encoder.encode(part));
  }

  bytes(): Uint8Array {
    const bytes = new Uint8Array(this.#parts.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const part of this.#parts) {
      bytes.set(part, at);
      at += part.length;
    }
    return bytes;
  }
}
