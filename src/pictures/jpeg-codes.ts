/** A table of codes as a file holds it, and as a writer asks it. */
export interface CodeBook {
  /** How many codes there are of each length from 1 to 16. */
  readonly counts: readonly number[];
  /** Values in the order of their codes. */
  readonly values: readonly number[];
  /** By value. */
  readonly codes: Uint16Array;
  readonly lengths: Uint8Array;
}

const LONGEST = 16;

/**
 * The best codes for values that come so often, none longer than 16 bits and none of ones alone (T.81, K.2, from memory): Huffman's,
 * and where one is too long, its pair moves up beside a shorter one.
 */
export function codeBook(frequencies: readonly number[]): CodeBook {
  const used = frequencies.flatMap((count, value) => (count > 0 ? [value] : []));
  // One more than there are, never used: the code of ones alone falls to it, as the rarest.
  const nodes = [...used.map((value) => ({ count: frequencies[value]!, values: [value] })), { count: 0, values: [-1] }];
  const depth = new Map<number, number>();
  while (nodes.length > 1) {
    nodes.sort((a, b) => b.count - a.count || b.values.length - a.values.length);
    const [a, b] = [nodes.pop()!, nodes.pop()!];
    for (const value of [...a.values, ...b.values]) depth.set(value, (depth.get(value) ?? 0) + 1);
    nodes.push({ count: a.count + b.count, values: [...a.values, ...b.values] });
  }
  const lengths = new Array<number>(Math.max(LONGEST, ...depth.values()) + 1).fill(0);
  for (const length of depth.values()) lengths[length]!++;
  for (let length = lengths.length - 1; length > LONGEST; length--) {
    while (lengths[length]! > 0) {
      let shorter = length - 2;
      while (lengths[shorter] === 0) shorter--;
      lengths[length]! -= 2;
      lengths[length - 1]! += 1;
      lengths[shorter + 1]! += 2;
      lengths[shorter]! -= 1;
    }
  }
  let longest = LONGEST;
  while (lengths[longest] === 0) longest--;
  lengths[longest]! -= 1;

  const counts = lengths.slice(1, LONGEST + 1);
  const values = [...used].sort((a, b) => depth.get(a)! - depth.get(b)! || a - b);
  const book = { codes: new Uint16Array(256), lengths: new Uint8Array(256) };
  let code = 0;
  let next = 0;
  counts.forEach((count, i) => {
    for (let k = 0; k < count; k++) {
      const value = values[next++]!;
      book.codes[value] = code++;
      book.lengths[value] = i + 1;
    }
    code <<= 1;
  });
  return { counts, values, ...book };
}
