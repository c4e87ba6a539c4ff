import sharp, { type Sharp } from 'sharp';
import type { Pixels } from '../../src/pictures/model.ts';
import { openPicture, readPart } from '../../src/pictures/picture.ts';
import type { Problem } from '../../src/problems/problem.ts';

/** Test pictures are made, and read for comparison, by an independent library (libvips, libjpeg, libpng). */
export const WIDTH = 61;
export const HEIGHT = 43;

/** No two corners alike, smooth, and with a hard edge. */
export function rgbOf(width = WIDTH, height = HEIGHT): Buffer {
  const raw = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = (y * width + x) * 3;
      raw[i] = 40 + (180 * x) / width;
      raw[i + 1] = y < height / 3 ? 30 : 60 + (170 * y) / height;
      raw[i + 2] = 128 + 90 * Math.sin((x + 2 * y) / 17);
    }
  }
  return raw;
}

export const base = (width = WIDTH, height = HEIGHT): Sharp =>
  sharp(rgbOf(width, height), { raw: { width, height, channels: 3 } });

/** As the other library sees it: on white, eight bits, sRGB without any profile. */
export async function reference(bytes: Uint8Array): Promise<{ width: number; height: number; rgb: Uint8Array }> {
  const { data, info } = await sharp(bytes)
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  const rgb = Uint8Array.from({ length: width * height * 3 }, (_, i) =>
    channels === 1 ? data[Math.floor(i / 3)]! : data[Math.floor(i / 3) * channels + (i % 3)]!,
  );
  return { width, height, rgb };
}

/** The whole picture, not reduced; throws what is wrong with it. */
export async function whole(bytes: Uint8Array, name = 'made'): Promise<Pixels> {
  const opened = openPicture(bytes, name, ['picture']);
  if (!opened.ok) throw new Refused(opened.problems);
  const { size } = opened.value;
  const read = await readPart(opened.value, { x: 0, y: 0, ...size }, size, ['picture']);
  if (!read.ok) throw new Refused(read.problems);
  return read.value;
}

export class Refused extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(({ code, message }) => `${code}: ${message}`).join('; '));
    this.problems = problems;
  }
}

/** The one problem that reading a file ends with. */
export async function refusal(bytes: Uint8Array, name = 'made'): Promise<Problem> {
  try {
    await whole(bytes, name);
  } catch (problem) {
    if (problem instanceof Refused && problem.problems.length === 1) return problem.problems[0]!;
    throw problem;
  }
  throw new Error('the picture was read');
}

export function differences(a: Uint8Array, b: Uint8Array): { most: number; mean: number } {
  let [most, sum] = [0, 0];
  for (let i = 0; i < a.length; i++) {
    const d = Math.abs(a[i]! - b[i]!);
    most = Math.max(most, d);
    sum += d;
  }
  return { most, mean: sum / a.length };
}
