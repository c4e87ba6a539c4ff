import pako from 'pako';
import type { Raster } from '../render.ts';

/** Sixteen greys are as many as black lines and letters need; a sheet is a quarter as large so. */
const LEVELS = 15;

/**
 * A picture as PNG (ISO/IEC 15948, from memory; no filters): what is black alone in four bits a pixel, else in three bytes. Deflated by a
 * package and not by the platform, whose versions differ, so that the same picture gives the same bytes.
 */
export function smallPng(raster: Raster, colour: boolean): Uint8Array {
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, raster.width);
  view.setUint32(4, raster.height);
  head.set(colour ? [8, 2, 0, 0, 0] : [4, 0, 0, 0, 0], 8);
  return joined([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', head),
    chunk('IDAT', pako.deflate(colour ? inColour(raster) : inGreys(raster), { level: 9 })),
    chunk('IEND', new Uint8Array(0)),
  ]);
}

function inGreys({ width, height, rgba }: Raster): Uint8Array {
  const stride = 1 + Math.ceil(width / 2);
  const rows = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const grey = Math.round((((rgba[at]! + rgba[at + 1]! + rgba[at + 2]!) / 3) * LEVELS) / 255);
      const cell = y * stride + 1 + (x >> 1);
      rows[cell] = rows[cell]! | (x % 2 === 0 ? grey << 4 : grey);
    }
  return rows;
}

function inColour({ width, height, rgba }: Raster): Uint8Array {
  const stride = 1 + 3 * width;
  const rows = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      rows.set(rgba.subarray(at, at + 3), y * stride + 1 + 3 * x);
    }
  return rows;
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const whole = new Uint8Array(data.length + 12);
  const view = new DataView(whole.buffer);
  view.setUint32(0, data.length);
  whole.set(
    [...name].map((letter) => letter.charCodeAt(0)),
    4,
  );
  whole.set(data, 8);
  view.setUint32(data.length + 8, crc(whole.subarray(4, data.length + 8)));
  return whole;
}

/** As the standard has it, bit by bit; other readers check it. */
function crc(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
