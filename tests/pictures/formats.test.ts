import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { openPicture } from '../../src/pictures/picture.ts';
import { base, differences, HEIGHT, reference, WIDTH, whole } from './made.ts';

/** `most`: what decoders may differ by, since none of them rounds its waves alike; 0 for what is lossless. */
const KINDS: readonly (readonly [name: string, made: () => Sharp, most: number, mean: number])[] = [
  ['PNG', () => base().png(), 0, 0],
  ['PNG, interlaced', () => base().png({ progressive: true }), 0, 0],
  ['PNG with a palette', () => base().png({ palette: true, colours: 200 }), 0, 0],
  ['PNG with a palette of 4 bits', () => base().png({ palette: true, colours: 13 }), 0, 0],
  ['PNG with a palette of 2 bits', () => base().png({ palette: true, colours: 4 }), 0, 0],
  ['PNG with a palette of 1 bit, interlaced', () => base().png({ palette: true, colours: 2, progressive: true }), 0, 0],
  ['PNG, grey', () => base().greyscale().png(), 0, 0],
  ['PNG, half see-through', () => base().ensureAlpha(0.5).png(), 1, 1],
  // The other library cuts the lower byte off, where this one rounds.
  ['PNG of 16 bits', () => base().toColourspace('rgb16').png(), 1, 1],
  ['PNG of 16 bits, grey', () => base().greyscale().toColourspace('grey16').png(), 1, 1],
  ['JPEG', () => base().jpeg({ quality: 96, chromaSubsampling: '4:4:4' }), 3, 0.1],
  ['JPEG, progressive', () => base().jpeg({ quality: 96, chromaSubsampling: '4:4:4', progressive: true }), 3, 0.1],
  ['JPEG, best scans', () => base().jpeg({ quality: 90, chromaSubsampling: '4:4:4', mozjpeg: true }), 3, 0.1],
  ['JPEG, grey', () => base().greyscale().jpeg({ quality: 96 }), 3, 0.1],
  ['JPEG, grey and progressive', () => base().greyscale().jpeg({ quality: 96, progressive: true }), 3, 0.1],
  // Colour of half the width and height: the other library smooths between its samples.
  ['JPEG, 4:2:0', () => base().jpeg({ quality: 96, chromaSubsampling: '4:2:0' }), 40, 3],
  [
    'JPEG, 4:2:0, progressive',
    () => base().jpeg({ quality: 96, chromaSubsampling: '4:2:0', progressive: true }),
    40,
    3,
  ],
];

describe('every usual kind of picture is read as another library reads it', () => {
  it.each(KINDS)('%s', async (_, made, most, mean) => {
    const bytes = await made().toBuffer();
    const [read, wanted] = [await whole(bytes), await reference(bytes)];
    expect([read.width, read.height]).toEqual([WIDTH, HEIGHT]);
    const found = differences(read.rgb, wanted.rgb);
    expect(found.most).toBeLessThanOrEqual(most);
    expect(found.mean).toBeLessThanOrEqual(mean);
  });
});

describe('inks', () => {
  it('CMYK is refused, whatever the name and the way it is stored', async () => {
    const bytes = await base().toColourspace('cmyk').jpeg({ quality: 100 }).toBuffer();
    const opened = openPicture(bytes, 'inks.jpg', ['picture']);
    expect(opened.ok ? [] : opened.problems).toMatchObject([{ code: 'picture-cmyk', path: ['picture'] }]);
  });
});

describe('colour profiles', () => {
  it.each([
    ['srgb', []],
    ['p3', ['picture-profile']],
  ] as const)('%s', async (profile, codes) => {
    const bytes = await base().withIccProfile(profile).jpeg().toBuffer();
    const opened = openPicture(bytes, 'made.jpg', []);
    expect(opened.ok && opened.value.warnings.map(({ code }) => code)).toEqual(codes);
  });
});

describe('how the camera was held', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('orientation %i', async (orientation) => {
    for (const bytes of [
      await base().jpeg({ quality: 98, chromaSubsampling: '4:4:4' }).withMetadata({ orientation }).toBuffer(),
      await base().png().withMetadata({ orientation }).toBuffer(),
    ]) {
      const upright = await sharp(bytes).rotate().raw().toBuffer({ resolveWithObject: true });
      const read = await whole(bytes);
      expect([read.width, read.height]).toEqual([upright.info.width, upright.info.height]);
      expect(differences(read.rgb, upright.data).most).toBeLessThanOrEqual(4);
    }
  });
});
