/**
 * Eight digits of a text, to tell plans apart: the 64 bits of FNV-1a (IETF draft-eastlake-fnv, its offset and prime from memory) over
 * its UTF-8. Among a hundred plans two have the same by chance once in twenty thousand times.
 */
export function numberOf(text: string): string {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  const digits = String(hash % 100_000_000n).padStart(8, '0');
  return `${digits.slice(0, 4)}-${digits.slice(4)}`;
}

/** A number as somebody reads it off the paper: spaces and hyphens do not matter. Undefined where it is none. */
export function readNumber(given: string): string | undefined {
  const digits = given.replaceAll(/[\s\u2010-\u2015-]/gu, '');
  return /^\d{8}$/.test(digits) ? `${digits.slice(0, 4)}-${digits.slice(4)}` : undefined;
}
