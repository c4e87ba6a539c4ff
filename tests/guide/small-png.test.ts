import { PNG } from 'pngjs';
import { expect, it } from 'vitest';
import { smallPng } from '../../src/dev/guide/small-png.ts';

/** Three by two: black, grey, white; red, green, blue. */
const RASTER = {
  width: 3,
  height: 2,
  rgba: Uint8Array.from([
    ...[0, 0, 0, 255, 119, 119, 119, 255, 255, 255, 255, 255],
    ...[255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255],
  ]),
};

it('in colour reads back as it was', () => {
  expect([...PNG.sync.read(Buffer.from(smallPng(RASTER, true))).data]).toEqual([...RASTER.rgba]);
});

it('in greys reads back as the nearest of sixteen', () => {
  const { data } = PNG.sync.read(Buffer.from(smallPng(RASTER, false)));
  expect([...data].filter((_, i) => i % 4 === 0)).toEqual([0, 119, 255, 85, 85, 85]);
});
