import '../svg-window.ts';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/model.ts';
import { readMark } from '../../src/pictures/mark.ts';
import { loadSvg } from '../../src/writers/svg/load.ts';
import { FONTS } from '../fonts/loaded.ts';
import { base } from './made.ts';
import { MARK } from './marks.ts';

const MOST = { width: 600, height: 300 };
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const read = (text: string) => readMark(bytesOf(text), 'mark.svg', MOST, ['shop', 'mark']);

const WIDTH = 300;

/** Grey of an SVG as another program paints it, cut to what is inked and so high. */
async function painted(svg: string, height: number): Promise<Buffer> {
  const { width: usual } = await sharp(Buffer.from(svg)).metadata();
  const large = await sharp(Buffer.from(svg), { density: (72 * 2 * WIDTH) / usual })
    .flatten({ background: '#ffffff' })
    .png()
    .toBuffer();
  const cut = await sharp(large).trim({ background: '#ffffff', threshold: 5 }).toBuffer({ resolveWithObject: true });
  // What is inked has its proportions, but for a pixel at each edge.
  expect(Math.abs(cut.info.height / cut.info.width - height / WIDTH)).toBeLessThan(0.01);
  return sharp(cut.data).resize({ width: WIDTH, height, fit: 'fill' }).greyscale().raw().toBuffer();
}

describe('the mark of a shop', () => {
  it.each([
    ['as programs write them', MARK],
    [
      'without a view of its own',
      '<svg xmlns="http://www.w3.org/2000/svg" width="60" height="60"><path d="M5 5l40 0 0 20z"/><circle cx="20" cy="30" r="8" fill="teal"/></svg>',
    ],
    [
      'with colours that are handed on',
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 90" fill="none" color="#336"><g fill="currentColor"><rect x="4" y="4" width="30" height="20" rx="5" ry="9"/></g><path fill="#777" d="M40 4H80V50L40 4M50 80A20 10 0 0 1 10 60Z"/></svg>',
    ],
  ])('is painted %s, as another program paints it', async (_, svg) => {
    const mark = await read(svg);
    if (!mark.ok) throw new Error(mark.problems.map(({ message }) => message).join());
    const { width, height, items } = mark.value;
    const drawing: Drawing = {
      title: 'mark',
      width,
      height,
      view: 'sheet',
      pens: {},
      groups: [{ name: 'mark', label: 'mark', shown: true, items: items! }],
    };
    const { writeSvg } = await loadSvg();
    const high = Math.round((WIDTH * height) / width);
    const [own, other] = await Promise.all([painted(writeSvg(drawing, { fonts: FONTS }), high), painted(svg, high)]);
    let [far, inked] = [0, 0];
    for (let i = 0; i < own.length; i++) {
      // Edges may fall on the neighbouring pixel; an area that is missing or filled wrongly is far more.
      if (Math.abs(own[i]! - other[i]!) > 60) far += 1;
      if (other[i]! < 250) inked += 1;
    }
    expect(inked).toBeGreaterThan(2000);
    expect(far / own.length).toBeLessThan(0.008);
  });

  const body = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg">\n${inside}\n</svg>`;
  it.each([
    ['lettering', body('<g>\n<text x="3">Tide</text></g>'), 'line 3: <text> is not read', 'make paths of its letters'],
    ['a picture', body('<image href="a.png"/>'), 'line 2: <image> is not read', 'name the picture'],
    ['a line', body('<path d="M0 0h9v9z" stroke="#000"/>'), 'line 2: <path> has a line of its own', 'make an area'],
    [
      'a line that a group has',
      body('<g style="stroke:red">\n<rect width="3" height="4"/></g>'),
      'line 3: <rect>',
      'area',
    ],
    ['a shade', body('<rect width="3" height="4" fill="url(#a)"/>'), 'filled with url(#a)', 'one colour'],
    [
      'a see-through area',
      body('<rect width="3" height="4" fill-opacity=".5"/>'),
      'see-through (fill-opacity)',
      'colour',
    ],
    ['a mask', body('<g mask="url(#m)"><rect width="3" height="4"/></g>'), 'has a mask', 'cut the areas'],
    [
      'a sheet of more than classes',
      body('<style>rect.a > b {fill:red}</style>'),
      'more than plain classes',
      'attributes',
    ],
    ['a unit of its own', body('<rect width="3cm" height="4"/>'), 'width="3cm"', 'without one'],
    ['broken path data', body('<path d="M0 0 L3"/>'), 'L takes 2 numbers', 'simplify'],
    ['an entity of its own', '<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', 'line 1: this is no proper XML', 'plain SVG'],
    ['an end of nothing', body('</g>'), '</g> ends nothing', 'plain SVG'],
    ['nothing', body('<defs><path d="M0 0h3v3z"/></defs>'), 'nothing to be seen', 'right file'],
    ['another root', '<?xml version="1.0"?><html/>', '<html> is no SVG', 'a PNG'],
  ])('is refused with its line where it holds %s', async (_, svg, message, hint) => {
    const mark = await read(svg);
    expect(mark.ok).toBe(false);
    if (mark.ok) return;
    const [problem] = mark.problems;
    expect([problem!.code, problem!.path]).toEqual(['mark-svg', ['shop', 'mark']]);
    expect(problem!.message).toContain(message);
    expect(problem!.hint).toContain(hint);
  });

  it.each([
    ['a style sheet without an end', body(`<style>${'/*'.repeat(200_000)}</style>`)],
    ['a transform of letters', body(`<g transform="${'a'.repeat(400_000)}"/>`)],
    ['elements in one another', `<svg>${'<g>'.repeat(100_000)}`],
    ['attributes of spaces', `<svg ${' '.repeat(400_000)}!>`],
    ['paths', body(`<path d="M0 0${'h1v1'.repeat(100_000)}"/>`)],
    ['areas', body('<rect width="3" height="4"/>'.repeat(6000))],
    ['a long file', ' '.repeat(600_000).replace(/^/, '<svg>')],
  ])('is refused quickly where it is no more than %s', async (_, svg) => {
    const began = performance.now();
    const mark = await read(svg);
    expect(mark.ok).toBe(false);
    expect(performance.now() - began).toBeLessThan(2000);
  });

  it('may be a picture, no larger than it is printed', async () => {
    const png = new Uint8Array(await base(900, 450).png().toBuffer());
    const mark = await readMark(png, 'mark.png', MOST, ['shop', 'mark']);
    expect(mark.ok && [mark.value.width, mark.value.height, mark.value.picture?.width]).toEqual([900, 450, 600]);
    const wrong = await readMark(bytesOf('GIF89a'), 'mark.gif', MOST, ['shop', 'mark']);
    expect(!wrong.ok && wrong.problems.map(({ code }) => code)).toEqual(['picture-kind']);
  });
});
