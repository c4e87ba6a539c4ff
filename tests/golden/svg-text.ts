import { createHash } from 'node:crypto';

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Longer path data are outlines of words, which nobody reads. */
const LONGEST = 160;

/**
 * An SVG as it is held in references: the hash of all its bytes first, so that none of them can change unseen, then its
 * lines, outlines cut down to their beginning and their own hash. It is a tenth of the file.
 */
export function svgText(bytes: Uint8Array): string {
  const text = new TextDecoder().decode(bytes);
  const lines = text.replaceAll(/ d="([^"]+)"/g, (whole, data: string) =>
    data.length <= LONGEST ? whole : ` d="${data.slice(0, 40)} … ${hash(data).slice(0, 12)}"`,
  );
  return `sha256 ${hash(text)}, ${bytes.length} bytes\n${lines}`;
}
