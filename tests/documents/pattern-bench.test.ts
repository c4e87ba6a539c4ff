import { describe, expect, it } from 'vitest';
import { pattern } from '../../src/documents/pattern/pattern.ts';
import type { Item, TextItem } from '../../src/drawing/model.ts';
import { solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';

const SHOP = 'heads: {pull: {bar: 40 mm, start: 0, stop: 0}}\nguide: {longest: 100 mm}\nunits: mm\n';

function made(job: string, shop?: string) {
  const solved = solveJob(job, shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const { mat, strokes, job: read } = solved.value;
  const drawn = mat.layers.map((_, layer) => pattern(mat, strokes, read, layer, { fonts: FONTS }));
  return { ...solved.value, drawn };
}

/** The rows of sheet 1's table of settings. */
const tabled = (drawn: ReturnType<typeof pattern>): string =>
  (drawn.readings?.rows ?? []).map((row) => row.join(': ')).join('\n');

const items = (drawn: ReturnType<typeof pattern>, group: string): readonly Item[] =>
  drawn.drawing.groups.find((each) => each.name === group)?.items ?? [];
const texts = (drawn: ReturnType<typeof pattern>, group: string): readonly string[] =>
  items(drawn, group)
    .filter((item): item is TextItem => item.kind === 'text')
    .map((item) => item.text);

describe('a side past the guide’s longest setting', () => {
  // Borders 90 at the sides, 160 at the ends; the guide reaches 100.
  const JOB = 'units: mm\nmat: {outer: 400 x 600}\nopenings: [{size: 220 x 280}]\nbench: {head: pull}\n';

  it('is laid to a drawn bar line, told apart by its dashes and named in the legend', () => {
    const {
      drawn: [sheet],
      strokes,
    } = made(JOB, SHOP);
    const bars = items(sheet!, 'straightedge').filter((item) => 'pen' in item && item.pen === 'bar');
    expect(bars).toHaveLength(2);
    const top = bars.find((item) => item.kind === 'line' && item.id === 'bar-1-top');
    // The line to follow lies 1.4 mm inside the face at 160; the bar 40 mm out from it; the paper 1 mm in.
    expect(top).toMatchObject({ from: { y: expect.closeTo(160 + 1.4 - 40 + 1, 9) } });
    expect(sheet!.legend).toContainEqual({ pen: 'bar', text: 'guide off: lay the bar on this line' });
    expect(texts(sheet!, 'readings').filter((text) => text === 'guide off')).toHaveLength(2);
    // 160 to the face line, 1.4 more to the line on the back, and 40 less to the bar: to half a millimetre.
    expect(texts(sheet!, 'readings').filter((text) => text === '121.5 mm')).toHaveLength(2);
    expect(texts(sheet!, 'readings')).toContain('edge to bar, scant by 0.1 mm');
    const named = strokes.filter((stroke) => stroke.bar !== undefined).map(({ order }) => `bar for ${order}`);
    expect([...texts(sheet!, 'straightedge')].sort()).toEqual(named.sort());
    expect(strokes.filter((stroke) => stroke.bar !== undefined).map((stroke) => stroke.side)).toEqual(
      expect.arrayContaining(['top', 'bottom']),
    );
    expect(tabled(sheet!)).toMatch(/guide off.*121\.5 mm.*edge to bar.*scant by 0\.1 mm.*top/);
  });

  it('has no line and no legend where the guide reaches', () => {
    const [sheet] = made(JOB, SHOP.replace('100 mm', '200 mm')).drawn;
    expect(items(sheet!, 'straightedge')).toEqual([]);
    expect(sheet!.legend.some(({ pen }) => pen === 'bar')).toBe(false);
  });
});

describe('a pattern after something was cut otherwise', () => {
  const JOB =
    'units: mm\nmat: {outer: 400 x 500, layers: [{}, {reveal: 6}]}\nopenings: [{artwork: 200 x 260, overlap: 5}]\n';

  it('marks readings that changed, and says the sizes on sheet 1', () => {
    const [top, under] = made(`${JOB}asCut: {openings: [{size: 203.5 x 262}]}\n`).drawn;
    // 200 − 10 + 12 = 202 wide was planned: left and right are 0.75 mm less.
    expect(texts(top!, 'readings').filter((text) => /, changed, cut already$/.test(text))).toHaveLength(2);
    expect(texts(under!, 'readings').filter((text) => /, changed$/.test(text))).toHaveLength(2);
    expect(texts(under!, 'readings').some((text) => text.includes('cut already'))).toBe(false);
    const said = under!.instructions!.join('\n');
    expect(said).toContain('left border 98.25 mm (planned 99 mm)');
    expect(tabled(under!)).toMatch(/104 mm, full by 0\.3 mm, changed: .*left/);
    expect(made(JOB).drawn[1]!.instructions!.join('\n')).not.toContain('hanged');
  });

  it('draws an under mat that is cut apart on its own board', () => {
    const { drawn, mat, strokes, job } = made(
      `${JOB}bench: {stack: apart}\nasCut: {layers: [{}, {blank: 402 x 500}]}\n`,
    );
    expect(mat.layers[1]!.blankBox).toMatchObject({ x: -1, width: 402 });
    expect(strokes.find((s) => s.layer === 2 && s.side === 'left')!.distance).toBeCloseTo(99 + 6 + 1, 9);
    expect(drawn).toHaveLength(2);
    expect(job.asCut!.blanks[1]).toEqual({ width: 402, height: 500 });
  });
});
