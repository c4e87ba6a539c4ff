import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { Size } from '../../src/geometry/point.ts';
import { readJpeg } from '../../src/pictures/jpeg.ts';
import { readJpegHead } from '../../src/pictures/jpeg-head.ts';
import { openPicture, readPart } from '../../src/pictures/picture.ts';
import { readPng } from '../../src/pictures/png.ts';
import { crc, readPngHead } from '../../src/pictures/png-head.ts';
import { Reducer } from '../../src/pictures/reducer.ts';
import { base, Refused, refusal, whole } from './made.ts';

const text = (words: string): Uint8Array => new TextEncoder().encode(words);

/** A PNG of its head alone, and of whatever else is given. */
function png(
  width: number,
  height: number,
  depth: number,
  colour: number,
  ...parts: readonly [string, Uint8Array][]
): Uint8Array {
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head.set([depth, colour, 0, 0, 0], 8);
  const chunks = ([['IHDR', head], ...parts, ['IEND', new Uint8Array()]] as [string, Uint8Array][]).map(
    ([name, body]) => {
      const chunk = new Uint8Array(12 + body.length);
      const v = new DataView(chunk.buffer);
      v.setUint32(0, body.length);
      chunk.set(text(name), 4);
      chunk.set(body, 8);
      v.setUint32(8 + body.length, crc(chunk.subarray(4, 8 + body.length)));
      return chunk;
    },
  );
  return new Uint8Array(Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), ...chunks]));
}

const deflated = async (bytes: Uint8Array): Promise<Uint8Array> =>
  new Uint8Array(
    await new Response(
      new Blob([bytes as Uint8Array<ArrayBuffer>]).stream().pipeThrough(new CompressionStream('deflate')),
    ).arrayBuffer(),
  );

/** The marker of a JPEG's frame, replaced. */
function reframed(bytes: Uint8Array, marker: number, precision = 8): Uint8Array {
  const made = bytes.slice();
  const at = made.findIndex((byte, i) => byte === 0xff && (made[i + 1] === 0xc0 || made[i + 1] === 0xc2));
  made[at + 1] = marker;
  made[at + 4] = precision;
  return made;
}

const jpeg = new Uint8Array(await base().jpeg({ quality: 90 }).toBuffer());
const progressive = new Uint8Array(await base().jpeg({ quality: 90, progressive: true }).toBuffer());
const picture = new Uint8Array(await base().png().toBuffer());

const TABLE: readonly (readonly [name: string, bytes: Uint8Array, code: string, words: RegExp])[] = [
  ['an empty file', new Uint8Array(), 'picture-empty', /empty/],
  ['a text', text('not a picture at all'), 'picture-kind', /neither a JPEG nor a PNG/],
  ['a GIF', await base().gif().toBuffer(), 'picture-kind', /a GIF; only JPEG and PNG/],
  ['a TIFF', await base().tiff().toBuffer(), 'picture-kind', /a TIFF/],
  ['a WebP', await base().webp().toBuffer(), 'picture-kind', /a WebP/],
  ['an AVIF', await base().avif().toBuffer(), 'picture-kind', /an AVIF/],
  ['an SVG', text('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'picture-kind', /an SVG/],
  ['a PDF', text('%PDF-1.7'), 'picture-kind', /a PDF/],
  ['a JPEG of two bytes', jpeg.subarray(0, 3), 'picture-broken', /broken/],
  ['half of a JPEG', jpeg.subarray(0, jpeg.length / 2), 'picture-broken', /end too soon/],
  ['half of a progressive JPEG', progressive.subarray(0, progressive.length / 2), 'picture-broken', /broken/],
  ['a JPEG without pixels', Uint8Array.from([0xff, 0xd8, 0xff, 0xd9]), 'picture-broken', /no size/],
  ['a JPEG of 12 bits', reframed(jpeg, 0xc1, 12), 'picture-kind', /12 bits a colour/],
  ['a JPEG without loss', reframed(jpeg, 0xc3), 'picture-kind', /rare kind \(lossless\)/],
  ['a JPEG in arithmetic code', reframed(jpeg, 0xc9), 'picture-kind', /rare kind \(arithmetic\)/],
  ['half of a PNG', picture.subarray(0, picture.length / 2), 'picture-broken', /ends too soon/],
  ['a PNG with a flipped bit', picture.map((b, i) => (i === 60 ? b ^ 4 : b)), 'picture-broken', /checksum/],
  ['a PNG without pixels', png(10, 10, 8, 2), 'picture-broken', /no pixels/],
  ['a PNG of no width', png(0, 10, 8, 2, ['IDAT', await deflated(new Uint8Array(10))]), 'picture-empty', /no pixels/],
  ['a PNG of 3 bits', png(10, 10, 3, 0), 'picture-broken', /3 bits/],
  [
    'a PNG without its palette',
    png(8, 8, 8, 3, ['IDAT', await deflated(new Uint8Array(72))]),
    'picture-broken',
    /palette/,
  ],
  [
    'a PNG with too few rows',
    png(8, 8, 8, 0, ['IDAT', await deflated(new Uint8Array(40))]),
    'picture-broken',
    /end too soon/,
  ],
  ['a PNG that cannot be unpacked', png(8, 8, 8, 0, ['IDAT', text('no deflated data')]), 'picture-broken', /unpacked/],
  [
    'a PNG with an unknown filter',
    png(8, 8, 8, 0, ['IDAT', await deflated(new Uint8Array(72).fill(9))]),
    'picture-broken',
    /filter 9/,
  ],
  [
    'a PNG that claims 10 milliard pixels',
    png(100_000, 100_000, 8, 2, ['IDAT', await deflated(new Uint8Array(9))]),
    'picture-large',
    /at most 400 million/,
  ],
  [
    'a small PNG that claims a hundred million pixels',
    png(10_000, 10_000, 8, 2, ['IDAT', await deflated(new Uint8Array(9))]),
    'picture-broken',
    /end too soon/,
  ],
  [
    'a large interlaced PNG',
    interlaced(png(10_000, 10_000, 8, 2, ['IDAT', await deflated(new Uint8Array(9))])),
    'picture-large',
    /interlaced/,
  ],
];

/** Its head says that it is, with a checksum that goes with it. */
function interlaced(bytes: Uint8Array): Uint8Array {
  const made = bytes.slice();
  made[28] = 1;
  new DataView(made.buffer).setUint32(29, crc(made.subarray(12, 29)));
  return made;
}

describe('pictures that cannot be read', () => {
  it.each(TABLE)('%s', async (_, bytes, code, words) => {
    const problem = await refusal(bytes);
    expect(problem).toMatchObject({ severity: 'error', code, path: ['picture'] });
    expect(problem.message).toMatch(words);
    expect(problem.hint).not.toBe('');
  });

  it('bytes changed at random never do anything but be read or be refused', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(jpeg, progressive, picture),
        fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), { minLength: 1, maxLength: 6 }),
        async (bytes, changes) => {
          const made = new Uint8Array(bytes);
          for (const [at, value] of changes) made[at % made.length] = value;
          try {
            const { width, height, rgb } = await whole(made);
            expect(rgb).toHaveLength(width * height * 3);
          } catch (problem) {
            expect(problem).toBeInstanceOf(Refused);
          }
        },
      ),
      { numRuns: 400 },
    );
  }, 60_000);
});

describe('pictures that are called wrongly', () => {
  it.each([
    ['heron.png', jpeg, /a JPEG, though its name ends in \.png/],
    ['heron.JPG', picture, /a PNG, though its name ends in \.jpg/],
    ['heron.tif', picture, /a PNG, though its name ends in \.tif/],
  ] as const)('%s is read as what it is, with a warning', async (name, bytes, words) => {
    const opened = openPicture(bytes, name, []);
    expect(opened.ok && opened.value.warnings.map(({ message }) => message)).toEqual([expect.stringMatching(words)]);
    await whole(bytes, name);
  });

  it.each(['heron.jpg', 'heron.jpeg', 'HERON.JPG', 'heron'])('%s needs none', (name) => {
    const opened = openPicture(jpeg, name, []);
    expect(opened.ok && opened.value.warnings).toEqual([]);
  });
});

describe('large pictures', () => {
  const most = { width: 600, height: 600 };
  const whole_ = (size: Size) => ({ x: 0, y: 0, ...size });

  /** Takes rows as they come, and notes the most memory that is held then, MB. */
  class Watched extends Reducer {
    readonly #before = process.memoryUsage().arrayBuffers;
    worst = 0;
    rows = 0;

    override take(y: number, rgb: Uint8Array): void {
      super.take(y, rgb);
      this.rows++;
      if (y % 64 === 0) this.worst = Math.max(this.worst, (process.memoryUsage().arrayBuffers - this.#before) / 1e6);
    }
  }

  it('a JPEG of a hundred million pixels is read in little memory', async () => {
    const made = sharp({ create: { width: 12_500, height: 8000, channels: 3, background: '#3a6ea5' } });
    const bytes = new Uint8Array(await made.jpeg({ quality: 80 }).toBuffer());
    const opened = openPicture(bytes, 'large.jpg', []);
    if (!opened.ok) throw new Error('not read');
    const part = await readPart(opened.value, whole_(opened.value.size), most, []);
    if (!part.ok) throw new Error('not read');
    expect([part.value.width, part.value.height]).toEqual([600, 384]);
    part.value.rgb.forEach((value, i) => {
      if (Math.abs(value - [0x3a, 0x6e, 0xa5][i % 3]!) > 2) throw new Error(`${value} at ${i}`);
    });
    const head = readJpegHead(bytes);
    const size = { width: 1563, height: 1000 };
    const watched = new Watched(size, whole_(size), part.value);
    readJpeg(bytes, head, 1, watched);
    expect(watched.rows).toBe(1000);
    expect(watched.worst).toBeLessThan(20);
  }, 120_000);

  it('a PNG of a hundred million pixels is read in little memory', async () => {
    const made = sharp({ create: { width: 10_000, height: 10_000, channels: 3, background: '#3a6ea5' } });
    const bytes = new Uint8Array(await made.greyscale().png({ compressionLevel: 1 }).toBuffer());
    const watched = new Watched({ width: 10_000, height: 10_000 }, whole_({ width: 10_000, height: 10_000 }), most);
    await readPng(readPngHead(bytes), watched);
    expect(watched.rows).toBe(10_000);
    expect(watched.worst).toBeLessThan(60);
    expect(new Set(watched.finish().rgb).size).toBe(1);
  }, 120_000);

  it('a progressive JPEG that would take too much is refused', async () => {
    const made = new Uint8Array(await base(16, 16).jpeg({ progressive: true }).toBuffer());
    const at = made.findIndex((byte, i) => byte === 0xff && made[i + 1] === 0xc2);
    new DataView(made.buffer, made.byteOffset).setUint16(at + 5, 14_000);
    new DataView(made.buffer, made.byteOffset).setUint16(at + 7, 20_000);
    const problem = await refusal(made);
    expect(problem).toMatchObject({ code: 'picture-large' });
    expect(problem.message).toMatch(/progressive JPEG of 20000 × 14000/);
  });
});

describe('the example', () => {
  it('has a picture of the artwork’s own proportions', async () => {
    const bytes = readFileSync(join(import.meta.dirname, '../../examples/heron/heron.png'));
    const { width, height } = await whole(bytes, 'heron.png');
    expect(width / height).toBeCloseTo(10.5 / 13.5, 6);
  });
});
