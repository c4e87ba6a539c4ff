import type { Orientation } from './model.ts';

const ORIENTATION = 0x0112;
const SHORT = 3;

/** The orientation that a block of Exif (a TIFF file without pictures) tells; 1 where it tells none, or is broken. */
export function orientationOf(tiff: Uint8Array): Orientation {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  if (tiff.length < 14) return 1;
  const order = view.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return 1;
  const little = order === 0x4949;
  if (view.getUint16(2, little) !== 42) return 1;
  const start = view.getUint32(4, little);
  if (start + 2 > tiff.length) return 1;
  const count = view.getUint16(start, little);
  for (let i = 0; i < count; i++) {
    const at = start + 2 + 12 * i;
    if (at + 12 > tiff.length) return 1;
    if (view.getUint16(at, little) !== ORIENTATION || view.getUint16(at + 2, little) !== SHORT) continue;
    const value = view.getUint16(at + 8, little);
    return value >= 1 && value <= 8 ? (value as Orientation) : 1;
  }
  return 1;
}
