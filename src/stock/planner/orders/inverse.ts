const SINGULAR = 1e-9;

/** `inverse` becomes that of `matrix`, which is spent; false, with `inverse` as it was, where there is none. */
export function invert(matrix: Float64Array, inverse: Float64Array, rows: number): boolean {
  const out = new Float64Array(rows * rows);
  for (let r = 0; r < rows; r++) out[r * rows + r] = 1;
  for (let c = 0; c < rows; c++) {
    let pivot = c;
    for (let r = c + 1; r < rows; r++) {
      if (Math.abs(matrix[r * rows + c]!) > Math.abs(matrix[pivot * rows + c]!)) pivot = r;
    }
    const value = matrix[pivot * rows + c]!;
    if (Math.abs(value) < SINGULAR) return false;
    for (const each of [matrix, out]) {
      for (let k = 0; k < rows; k++) {
        const [one, other] = [each[c * rows + k]!, each[pivot * rows + k]!];
        each[pivot * rows + k] = one;
        each[c * rows + k] = other / value;
      }
    }
    for (let r = 0; r < rows; r++) {
      const times = matrix[r * rows + c]!;
      if (r === c || times === 0) continue;
      for (let k = 0; k < rows; k++) {
        matrix[r * rows + k]! -= times * matrix[c * rows + k]!;
        out[r * rows + k]! -= times * out[c * rows + k]!;
      }
    }
  }
  inverse.set(out);
  return true;
}
