import { describe, expect, test } from 'vitest';
import type { Drawing, PathItem } from '../../src/drawing/model.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { straightSides } from '../../src/geometry/path.ts';
import { itemsOf, JOB, lineNamed, made, SHOP, textsOf } from './jig-samples.ts';

function pathNamed(drawing: Drawing, id: string): PathItem {
  const found = itemsOf(drawing).find((item): item is PathItem => item.kind === 'path' && item.id === id);
  if (found === undefined) throw new Error(`no path ${id}`);
  return found;
}

const paths = (drawing: Drawing) => itemsOf(drawing).filter((item): item is PathItem => item.kind === 'path');
const words = (drawing: Drawing) => textsOf(drawing).map((item) => item.text);
const sheet = async (kind: string, wish = {}) => (await made(kind, { job: JOB, ...wish })).drawings[0]!;

describe('the wedge', () => {
  test('the slot is as wide as the number beside it says', async () => {
    const drawing = await sheet('bevel');
    const [slot] = pathNamed(drawing, 'slot').paths;
    const [top, , sloped] = straightSides(slot!);
    for (let tenth = 5; tenth <= 65; tenth++) {
      const { x } = lineNamed(drawing, `wedge-${tenth}`).from;
      const share = (x - sloped!.to.x) / (sloped!.from.x - sloped!.to.x);
      const y = sloped!.to.y + share * (sloped!.from.y - sloped!.to.y);
      expect(y - top!.from.y).toBeCloseTo(tenth / 10, 9);
    }
  });
});

describe('the border gauge', () => {
  test('a hole for every border, as far from both edges', async () => {
    const drawing = await sheet('corner-gauge');
    const outline = pathBox(pathNamed(drawing, 'outline').paths[0]!);
    for (let i = 0; i < 14; i++) {
      const hole = pathBox(pathNamed(drawing, `hole-${i}`).paths[0]!);
      const border = (1 + i / 4) * 25.4;
      expect(hole.x + hole.width / 2 - outline.x).toBeCloseTo(border, 9);
      expect(hole.y + hole.height / 2 - outline.y).toBeCloseTo(border, 9);
      expect(lineNamed(drawing, `across-${i}`).from.x - outline.x).toBeCloseTo(border, 9);
    }
  });
});

describe('the reveal spacers', () => {
  test('blades are as wide as they say, the job’s own reveal among them', async () => {
    const drawing = await sheet('reveal', { job: JOB.replace('reveal: 1/4', 'reveal: 7/32') });
    const widths = paths(drawing)
      .filter((item) => item.id?.startsWith('spacer-'))
      .map((item) => {
        const [, end] = straightSides(item.paths[0]!);
        return [item.id, Number((end!.to.y - end!.from.y).toFixed(6))];
      });
    expect(Object.fromEntries(widths)).toMatchObject({
      'spacer-1/8 in': 3.175,
      'spacer-3/16 in': 4.7625,
      'spacer-7/32 in': 5.55625,
      'spacer-1/2 in': 12.7,
    });
  });
});

describe('the protractor', () => {
  test('its lines stand at the angles that they say', async () => {
    const drawing = await sheet('protractor');
    const base = lineNamed(drawing, 'base');
    for (let tenths = 860; tenths <= 940; tenths += 5) {
      const { from, to } = lineNamed(drawing, `angle-${tenths}`);
      const angle = Math.atan2(from.y - to.y, to.x - from.x) - Math.atan2(0, base.to.x - base.from.x);
      expect((angle * 180) / Math.PI).toBeCloseTo(tenths / 10, 9);
      // They meet in the crossing.
      const back = (from.x - base.from.x) * (to.y - base.from.y) - (from.y - base.from.y) * (to.x - base.from.x);
      expect(Math.abs(back)).toBeLessThan(1e-6);
    }
  });
});

describe('the spacers for production stops', () => {
  test('starts and ends have a zero of their own, and no spacer is negative', async () => {
    const { drawings } = await made('stops', { job: JOB });
    const lengths = drawings
      .flatMap(paths)
      .filter((item) => item.id?.startsWith('spacer-'))
      .map((item) => pathBox(item.paths[0]!).width);
    // Of the 16 × 20 in mat, borders 2 3/4, 3 and 3 1/2: strokes run down, so from the edge that they run to …
    const mm = (inches: number) => inches * 25.4;
    const [starts, ends] = [[], []] as [number[], number[]];
    for (const [inner, reveal] of [
      [{ sides: 2.75, top: 3, bottom: 3.5 }, 0],
      [{ sides: 2.75, top: 3, bottom: 3.5 }, 0.25],
    ] as const) {
      const [sides, top, bottom] = [inner.sides + reveal, inner.top + reveal, inner.bottom + reveal];
      // … the left side starts bottom − 1.2 + 0.25 … from the far corner, in the travel's own direction.
      const strokes = [
        { along: 16, before: sides, after: sides },
        { along: 16, before: sides, after: sides },
        { along: 20, before: top, after: bottom },
        { along: 20, before: bottom, after: top },
      ];
      for (const { along, before, after } of strokes) {
        starts.push(mm(along - before) + 1.2 + 0.25);
        ends.push(mm(after) - (0.4 + 0.25));
      }
    }
    const expected = [starts, ends].flatMap((list) => {
      const zero = Math.min(...list);
      return [...new Set(list.map((value) => Number((value - zero).toFixed(4))).filter((value) => value > 0.05))];
    });
    expect(lengths.map((value) => Number(value.toFixed(4))).sort((a, b) => a - b)).toEqual(
      expected.sort((a, b) => a - b),
    );
    expect(Math.min(...lengths)).toBeGreaterThan(0);
  });

  test('what is longer than the sheet is listed, not drawn', async () => {
    const { codes } = await made('stops', { job: JOB.replace('16 x 20', '16 x 40').replace('13 1/2', '30') });
    expect(codes).toEqual(['jig-spacers-left-out']);
  });
});

describe('the artwork corner', () => {
  test('its inner corner lies where the artwork’s does', async () => {
    const drawing = await sheet('art-corner');
    const [angle] = pathNamed(drawing, 'outline').paths;
    const sides = straightSides(angle!);
    // Artwork 10 1/2 × 13 1/2 under an opening of 10 × 13: borders 3 and 3 1/4 less the overlap of 1/4.
    const inner = sides[2]!.to;
    expect(inner.x - angle!.start.x).toBeCloseTo(2.75 * 25.4, 9);
    expect(inner.y - angle!.start.y).toBeCloseTo(3 * 25.4, 9);
  });
});

describe('sizes to try', () => {
  test('five borders at full scale, the job’s in the middle', async () => {
    const { drawings } = await made('sizes', { job: JOB });
    const high = (drawing: Drawing, column: number, band: number) =>
      pathBox(pathNamed(drawing, `try-${column}-${band}`).paths[0]!).height;
    // Band 1 is the strip of the under mat; the border is 2 3/4 in by steps of 1/2.
    for (let i = 0; i < 5; i++) expect(high(drawings[0]!, i + 1, 2)).toBeCloseTo((1.75 + i / 2) * 25.4, 9);
    // The reveal of 1/4 in by sixteenths; the bevel above hides 1.4 mm of each.
    for (let i = 0; i < 5; i++) expect(high(drawings[1]!, i + 1, 1)).toBeCloseTo((1 / 8 + i / 16) * 25.4 - 1.4, 9);
    expect(words(drawings[0]!)).toContain('2 3/4 in');
  });
});

describe('the square check', () => {
  test('diagonals and shears of the job’s own rectangles (check value 46: 16 × 20 is 25.6125)', async () => {
    const text = words(await sheet('square'));
    // 25.6125 in is 25 39/64 and 0.003 in more: 650.56 mm.
    expect(text).toContain('25\u2009³⁹⁄₆₄ in (650.56 mm)');
    // A difference of 1/8 in on 16 × 20: d·D/(2·w) = 3.175 × 650.5575 / 812.8 = 2.541.
    expect(text).toContain('2.54');
  });
});

describe('the wall chart', () => {
  test('sizes, borders and readings of the shop’s own guide', async () => {
    const text = words(await sheet('chart', { job: undefined }));
    // 16 × 20 in the ready frame takes 11 × 14 with 1/4 in covered: borders 2 3/4 and 3 1/4.
    for (const cell of ['16 × 20 in', 'Ash', '11 × 14 in', '10½ × 13½ in', '2¾ in', '3¼ in'])
      expect(text).toContain(cell);
    // 2 3/4 in is 69.85 mm: (69.85 − 0.2) / 1.002 = 69.511 mm, 0.34 mm under the mark.
    expect(text).toContain('2¾ in scant');
  });
});

describe('what a machine cuts', () => {
  test('outlines and marks at full scale in SVG and DXF, and nothing of the sheet', async () => {
    const { files, drawings } = await made('reveal', { shop: SHOP, cut: ['svg', 'dxf'] });
    expect(files.map((file) => file.name)).toEqual(['jig-reveal.pdf', 'jig-reveal.svg', 'jig-reveal.dxf']);
    const text = (name: string) => new TextDecoder().decode(files.find((file) => file.name === name)!.bytes);
    expect(text('jig-reveal.svg')).toMatch(/<g id="cut"/);
    expect(text('jig-reveal.svg')).not.toContain('jig reveal, made for');
    // The correction of the printer is for paper alone: the blade of 12.7 mm is 12.7 mm here.
    expect(text('jig-reveal.svg')).toContain('12.7');
    expect(text('jig-reveal.dxf')).toContain('$INSUNITS');
    expect(drawings).toHaveLength(1);
  });

  test('what has nothing to cut writes the sheets alone', async () => {
    expect((await made('square', { job: JOB, cut: ['svg'] })).files.map((file) => file.name)).toEqual([
      'jig-square.pdf',
    ]);
  });
});
