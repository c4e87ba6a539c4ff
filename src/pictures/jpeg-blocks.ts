/** Natural place of the k-th coefficient (T.81, figure A.6, from memory). */
export const ZIGZAG = Uint8Array.from([
  0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5, 12, 19, 26, 33, 40, 48, 41, 34, 27, 20, 13, 6, 7, 14, 21, 28,
  35, 42, 49, 56, 57, 50, 43, 36, 29, 22, 15, 23, 30, 37, 44, 51, 58, 59, 52, 45, 38, 31, 39, 46, 53, 60, 61, 54, 47,
  55, 62, 63,
]);

/** Side of what a block is drawn as: 8 is the whole picture, 1 every block as one pixel, its mean. */
export type Side = 1 | 2 | 4 | 8;

/** Rows of the inverse transform of so many points; with ½ from the definition whatever the side (T.81, A.3.3, from memory). */
const BASES: Readonly<Record<Side, Float64Array>> = { 1: basis(1), 2: basis(2), 4: basis(4), 8: basis(8) };

function basis(side: number): Float64Array {
  return Float64Array.from({ length: side * side }, (_, i) => {
    const [x, u] = [Math.floor(i / side), i % side];
    return 0.5 * (u === 0 ? Math.SQRT1_2 : 1) * Math.cos(((2 * x + 1) * u * Math.PI) / (2 * side));
  });
}

const halfway = new Float64Array(64);

/**
 * Draws a block of coefficients (in natural order, already multiplied by their steps) into a plane, `side` pixels square:
 * of its 64 waves those that so few pixels can show.
 */
export function drawBlock(block: Int32Array, side: Side, plane: Uint8ClampedArray, at: number, stride: number): void {
  if (side === 1) {
    plane[at] = block[0]! / 8 + 128;
    return;
  }
  const base = BASES[side];
  for (let v = 0; v < side; v++) {
    const from = v * 8;
    let last = side - 1;
    while (last > 0 && block[from + last] === 0) last--;
    for (let x = 0; x < side; x++) {
      let sum = 0;
      for (let u = 0; u <= last; u++) sum += block[from + u]! * base[x * side + u]!;
      halfway[v * 8 + x] = sum;
    }
  }
  for (let x = 0; x < side; x++) {
    for (let y = 0; y < side; y++) {
      let sum = 128;
      for (let v = 0; v < side; v++) sum += halfway[v * 8 + x]! * base[y * side + v]!;
      plane[at + y * stride + x] = sum;
    }
  }
}
