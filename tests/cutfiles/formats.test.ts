import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderSvg } from '../../src/dev/render.ts';
import { chainLength, chainPoints, readDxf } from '../readers/dxf.ts';
import { plot } from '../readers/hpgl.ts';
import { readSvg } from '../readers/svg-elements.ts';
import { cut } from './cut.ts';
import { apart, Chain, dense, type P } from './points.ts';
import { waysOf } from './read-svg.ts';

/** One way of a tool, as a reader found it, y down from the top of the drawing. */
interface Way {
  readonly layer: string;
  readonly closed: boolean;
  readonly points: readonly P[];
}

const lengthOf = (points: readonly P[]): number => points.slice(1).reduce((sum, p, i) => sum + apart(p, points[i]!), 0);

const mats = fc.record({
  top: fc.integer({ min: 30, max: 90 }),
  left: fc.integer({ min: 30, max: 90 }),
  right: fc.integer({ min: 30, max: 90 }),
  width: fc.integer({ min: 60, max: 200 }),
  height: fc.integer({ min: 60, max: 200 }),
  reveals: fc.array(fc.integer({ min: 4, max: 9 }), { maxLength: 2 }),
});

type Mat = typeof mats extends fc.Arbitrary<infer T> ? T : never;
type Machine = typeof machines extends fc.Arbitrary<infer T> ? T : never;

const jobOf = ({ top, left, right, width, height, reveals }: Mat): string => `
units: mm
mat:
  border: {top: ${top}, left: ${left}, right: ${right}, bottom: 70}
  layers: [{}${reveals.map((reveal) => `, {reveal: ${reveal}}`).join('')}]
openings: [{size: ${width} x ${height}}]
`;

const machines = fc
  .record({
    kind: fc.constantFrom('laser' as const, 'knife' as const, 'bevel' as const),
    up: fc.constantFrom('back', 'face'),
    together: fc.boolean(),
    turn: fc.boolean(),
    kerf: fc.constantFrom(0, 0.1, 0.25),
    gap: fc.constantFrom(0, 3),
    passes: fc.constantFrom(1, 2),
  })
  .map((machine) => ({ ...machine, turn: machine.turn && !machine.together }));

function shopOf({ kind, up, kerf, gap, passes }: Machine): string {
  const own = {
    laser: `kerf: ${kerf}`,
    knife: `offset: ${kerf}, passes: ${passes}`,
    bevel: `bevel: 45, start: ${kerf}, stop: 0.1`,
  }[kind];
  return `units: mm\nmachines: {m: {kind: ${kind}, up: ${up}, gap: ${gap}, notes: false, ${own}}}\n`;
}

/** Every file in every format, read by a reader of its own. */
async function read(job: string, shop: string, options: object): Promise<readonly (readonly Way[])[][]> {
  const made = async (format: string, dialect = 'r12') =>
    (await cut(job, shop, { ...options, machine: 'm', format: [format], dialect })).texts.filter(
      // A plotter's file has a drawing of the bed beside it.
      (text) => format === 'svg' || !text.startsWith('<svg'),
    );
  const [svg, r12, r2000, hpgl] = [
    await made('svg'),
    await made('dxf'),
    await made('dxf', 'r2000'),
    await made('hpgl'),
  ];
  const fromDxf = (text: string, height: number): Way[] =>
    readDxf(text).polylines.map(({ layer, closed, ...chain }) => ({
      layer,
      closed,
      points: chainPoints({ layer, closed, ...chain }, 1000).map(({ x, y }) => ({ x, y: height - y })),
    }));
  return svg.map((text, i) => {
    const height = readSvg(text).viewBox[3]!;
    const uncut = (way: Way): boolean => way.layer !== 'note';
    return [
      waysOf(text).map(({ layer, closed, points }) => ({
        layer,
        closed,
        points: closed ? [...points, points[0]!] : points,
      })),
      fromDxf(r12[i]!, height),
      fromDxf(r2000[i]!, height),
      plot(hpgl[i]!).lines.map(({ points }) => {
        const all = points.map(([x, y]) => ({ x: x / 40, y: height - y / 40 }));
        const closed = all.length > 3 && apart(all[0]!, all.at(-1)!) === 0;
        return { layer: '', closed, points: all };
      }),
    ].map((ways) => ways.filter(uncut));
  });
}

const ORDER = ['registration', 'mark', 'score', 'inner', 'bevel', 'outer'];

describe('files for any machine and any mat, in every format', () => {
  it('hold the same ways in the same order; none twice, none inner after an outer, closed ones closed', async () => {
    let files = 0;
    await fc.assert(
      fc.asyncProperty(mats, machines, async (mat, machine) => {
        const options = { together: machine.together, turn: machine.turn };
        for (const formats of await read(jobOf(mat), shopOf(machine), options)) {
          files++;
          const [svg, ...others] = formats as [readonly Way[], ...(readonly Way[])[]];
          const ranks = svg.map(({ layer }) => ORDER.indexOf(layer));
          expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
          expect(ranks).not.toContain(-1);
          for (const ways of others) {
            expect(ways.length).toBe(svg.length);
            for (const [i, way] of ways.entries()) {
              const first = svg[i]!;
              if (way.layer !== '') expect(way.layer).toBe(first.layer);
              expect([way.closed, i]).toEqual([first.closed, i]);
              // A file of plotter units is good to half of one at both ends of every line; arcs lie within 0.01 mm.
              for (const [p, q] of [
                [way.points[0]!, first.points[0]!],
                [way.points.at(-1)!, first.points.at(-1)!],
              ] as const)
                expect(apart(p, q)).toBeLessThan(0.0125 * Math.SQRT2 + 0.001);
              expect(Math.abs(lengthOf(way.points) - lengthOf(first.points))).toBeLessThan(
                0.15 + 0.002 * lengthOf(first.points),
              );
            }
          }
          for (const ways of formats) noneTwice(ways, machine.kind);
        }
      }),
      { numRuns: 25 },
    );
    expect(files).toBeGreaterThan(25);
  });
});

/** Of one layer no two ways run along each other; a knife runs on past its beginning, along itself alone. */
function noneTwice(ways: readonly Way[], kind: string): void {
  for (const [i, way] of ways.entries()) {
    if (way.layer === 'mark' || way.layer === '') continue;
    if (way.closed) {
      const repeated = way.points.slice(1).filter((p, k) => apart(p, way.points[k]!) < 1e-4);
      expect(repeated).toEqual([]);
    }
    for (const other of ways.slice(i + 1)) {
      if (other.layer !== way.layer || (kind === 'knife' && way.layer === 'score')) continue;
      const chain = new Chain(other.points, 5);
      const along = dense(way.points, 1, false).filter((p) => chain.distance(p) < 0.01);
      // They may meet or cross, not run along each other.
      expect(along.length).toBeLessThan(5);
    }
  }
}

describe('an SVG for a machine', () => {
  const job = `
title: Herons & <reeds>
units: mm
mat: {border: 60, layers: [{bevel: 90}]}
openings: [{size: 150 x 200}]
`;
  const shop = `
units: mm
machines:
  laser: {kerf: 0.2, operations: {inner: {layer: CUT-IN, colour: "#123456"}, note: {layer: WORDS}}}
`;

  it('is in mm with the same numbers in its viewBox, says its size, and has the shop’s layers and colours', async () => {
    const { texts } = await cut(job, shop, { machine: 'laser' });
    const { width, height, viewBox, titles, remarks, groups, paths, attributes } = readSvg(texts[0]!);
    expect([width, height, viewBox]).toEqual(['270.2mm', '320.2mm', [0, 0, 270.2, 320.2]]);
    expect(titles[0]).toContain('(270.2 × 320.2 mm)');
    expect(titles[0]).toContain('Herons & <reeds>');
    expect(remarks[0]).toContain('Never put vinyl');
    expect(groups.map(({ id }) => id)).toEqual(['mark', 'CUT-IN', 'outer', 'WORDS']);
    expect(paths.find(({ groups: [layer] }) => layer === 'CUT-IN')!.attributes).toMatchObject({
      stroke: '#123456',
      fill: 'none',
    });
    expect([...attributes].filter((name) => ['style', 'class', 'transform', 'font-family'].includes(name))).toEqual([]);
  });

  it('shows in a renderer what it says: the cut lies where the arithmetic puts it', async () => {
    const { texts } = await cut(job, shop.replaceAll('kerf: 0.2', 'kerf: 0.2, line: 0.5, notes: false, marks: false'), {
      machine: 'laser',
    });
    const dpi = 254;
    const { width, height, rgba } = await renderSvg(texts[0]!, dpi);
    expect([width, height]).toEqual([2702, 3202]);
    const dark = (x: number, y: number): boolean => rgba[4 * (y * width + x) + 1]! < 128;
    // Ten pixels a millimetre. The opening begins 60 mm in, its path half a kerf farther in: columns 601 and 602 at its middle.
    const row = Array.from({ length: width }, (_, x) => x).filter((x) => dark(x, 1600));
    const middle = (from: number, to: number): number => {
      const found = row.filter((x) => x >= from && x < to);
      return (found.reduce((sum, x) => sum + x, 0) / found.length + 0.5) / 10;
    };
    expect(middle(500, 700)).toBeCloseTo(0.1 + 60 + 0.1, 1);
    expect(middle(2000, 2200)).toBeCloseTo(0.1 + 60 + 150 - 0.1, 1);
  });
});

describe('what a file says of itself', () => {
  it('lists operations, lengths, kerf and time, in numbers and words', async () => {
    const shop = `
units: mm
machines:
  laser:
    {kerf: 0.2, marks: false, travel: 400, lift: 0.5, operations: {inner: {speed: 20}, outer: {speed: 10}}}
`;
    const job = 'units: mm\nmat: {border: 60, layers: [{bevel: 45}]}\nopenings: [{size: 150 x 200}]\n';
    const { built } = await cut(job, shop, { machine: 'laser' });
    const [record] = built.report.cutfiles!;
    const [inner, outer] = record!.operations;
    expect(inner).toMatchObject({
      operation: 'inner',
      paths: 1,
      closed: 1,
      length: expect.closeTo(2 * (149.8 + 199.8), 6),
    });
    expect(outer).toMatchObject({
      operation: 'outer',
      paths: 1,
      closed: 1,
      length: expect.closeTo(2 * (270.2 + 320.2), 6),
    });
    const cutting = inner!.length / 20 + outer!.length / 10;
    expect(record!.seconds).toBeCloseTo(cutting + record!.travel / 400 + 2 * 0.5, 6);
    expect(record!.summary).toContain('inner 1 path (closed) of 0.7 m');
    expect(record!.summary).toMatch(/about 2 min \d+ s/u);
    expect(record!.allowances[0]).toContain('kerf 0.2 mm');
    // The bevel's back edge was the sight before: 1.4 mm on each side.
    expect(record!.sight).toEqual([
      {
        opening: 'opening 1',
        job: { width: expect.closeTo(147.2, 6), height: expect.closeTo(197.2, 6) },
        cut: { width: 150, height: 200 },
      },
    ]);
    expect(built.warnings.map(({ code }) => code)).toContain('sight-square');
  });

  it('knows no time without speeds, and no change of sight where the job is cut square anyway', async () => {
    const job = 'units: mm\nmat: {border: 60, layers: [{bevel: 90}]}\nopenings: [{size: 150 x 200}]\n';
    const { built } = await cut(job, 'machines: {laser: {}}\n', { machine: 'laser' });
    const [record] = built.report.cutfiles!;
    expect([record!.seconds, record!.sight]).toEqual([null, []]);
    expect(record!.allowances[0]).toContain('no kerf is allowed for');
    expect(built.warnings).toEqual([]);
  });

  it('leaves a layer out that is cut already, and names the others by their own number', async () => {
    const job = `
units: mm
mat: {outer: 300 x 400, layers: [{bevel: 90}, {bevel: 90, reveal: 6}]}
openings: [{size: 150 x 200}]
bench: {stack: apart}
asCut: {openings: [{layer: 1, size: 163 x 213}]}
`;
    const { names, built } = await cut(job, 'machines: {laser: {}}\n', { machine: 'laser' });
    expect(names).toEqual(['cut-laser-2.svg']);
    expect(built.warnings.map(({ code, path }) => [code, path])).toEqual([['layer-cut-already', ['mat', 'layers', 0]]]);
  });

  it('measures a chain’s arcs by their bulges', () => {
    const half = {
      layer: '',
      closed: false,
      vertices: [
        { x: 0, y: 0, bulge: 1 },
        { x: 20, y: 0, bulge: 0 },
      ],
    };
    expect(chainLength(half)).toBeCloseTo(10 * Math.PI, 9);
    expect(lengthOf(chainPoints(half, 1))).toBeCloseTo(10 * Math.PI, 2);
  });
});
