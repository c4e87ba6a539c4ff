import { expect } from 'vitest';

/** Equal to a part in a thousand million. */
export function expectExact(actual: number, expected: number): void {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(
    1e-9 * Math.max(1e-3, Math.abs(expected)),
  );
}

/** Equal but for one in the last of `digits` decimals. */
export function expectShown(actual: number, expected: number, digits: number): void {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(1.000001 * 10 ** -digits);
}

export function expectSize(
  actual: { readonly width: number; readonly height: number },
  expected: { readonly width: number; readonly height: number },
): void {
  expectExact(actual.width, expected.width);
  expectExact(actual.height, expected.height);
}
