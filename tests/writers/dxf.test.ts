import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { pathLength } from '../../src/geometry/measure.ts';
import type { Path, Segment } from '../../src/geometry/path.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { colourIndex } from '../../src/writers/dxf/colour.ts';
import { DXF_DIALECTS, writeDxf } from '../../src/writers/dxf/dxf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { chainLength, chainPoints, readDxf } from '../readers/dxf.ts';
import { randomShape } from '../shapes/random-shapes.ts';

const pens = {
  cut: { width: 0.1, colour: '#c00040', dash: [], cap: 'round' },
  dashed: { width: 0.1, colour: '#0060c0', dash: [3, 1], cap: 'round' },
} as const;

function drawing(items: readonly Item[], more: Partial<Drawing> = {}): Drawing {
  const groups = [{ name: 'CUT', label: 'Cut', shown: true, items }];
  return { title: 'Test', width: 300, height: 200, view: 'back', pens, groups, ...more };
}

const path = (paths: readonly Path[], pen = 'cut'): Item => ({ kind: 'path', pen, paths });
const arc = (x: number, y: number, cx: number, cy: number, clockwise: boolean): Segment => ({
  kind: 'arc',
  to: { x, y },
  centre: { x: cx, y: cy },
  clockwise,
});

describe.each(DXF_DIALECTS)('%s', (dialect) => {
  const read = (items: readonly Item[], more: Partial<Drawing> = {}) =>
    readDxf(writeDxf(drawing(items, more), { fonts: FONTS, dialect, comment: ['Keep away', 'Grüße: 16 × 20'] }));

  test('each layer has its colour and a line type that there is, each record an owner that there is', () => {
    const text = writeDxf(
      drawing([
        path([{ start: { x: 0, y: 0 }, segments: [{ kind: 'line', to: { x: 9, y: 9 } }], closed: false }], 'dashed'),
      ]),
      { fonts: FONTS, dialect },
    );
    const lines = text.split('\n').map((line) => line.trim());
    const records: Map<number, string>[] = [];
    for (let i = 0; i + 1 < lines.length; i += 2) {
      const [code, value] = [Number(lines[i]), lines[i + 1]!];
      if (code === 0) records.push(new Map());
      const own = records.at(-1);
      if (own !== undefined && !own.has(code)) own.set(code, value);
    }
    const named = (kind: string) => records.filter((own) => own.get(0) === kind);
    const lineTypes = named('LTYPE').map((own) => own.get(2));
    expect(named('LAYER').length).toBeGreaterThan(0);
    for (const own of named('LAYER')) {
      expect(lineTypes).toContain(own.get(6));
      expect(Math.abs(Number(own.get(62)))).toBeGreaterThan(0);
    }
    const handles = new Set(['0', ...records.flatMap((own) => own.get(5) ?? [])]);
    for (const own of records) if (own.has(330)) expect(handles).toContain(own.get(330));
    // Tables belong to the drawing itself, which is 0 (DXF reference, from memory).
    for (const own of named('TABLE')) if (own.has(330)) expect(own.get(330)).toBe('0');
  });

  test('says its version, mm, metric, and the extents of what is drawn, y up', () => {
    const { header, layers, lineTypes } = read([
      { kind: 'line', pen: 'cut', from: { x: 10, y: 20 }, to: { x: 110, y: 50 } },
      // A half circle reaches beyond its ends: 50 to the right.
      path([{ start: { x: 200, y: 60 }, segments: [arc(200, 160, 200, 110, true)], closed: false }]),
    ]);
    expect(header.$ACADVER).toBe(dialect === 'r12' ? 'AC1009' : 'AC1015');
    // Autodesk DXF reference, $INSUNITS: 1 inches, 4 millimetres, 5 centimetres.
    expect(header.$INSUNITS).toBe(4);
    expect(header.$MEASUREMENT).toBe(1);
    expect(header.$EXTMIN).toMatchObject({ x: 10, y: 40 });
    expect(header.$EXTMAX).toMatchObject({ x: 250, y: 180 });
    expect(Object.keys(layers)).toEqual(['0', 'CUT']);
    expect(lineTypes).toContain('CONTINUOUS');
  });

  test('gives a layer the colour of its pen and what is drawn with it none of its own', () => {
    const { layers } = read([{ kind: 'line', pen: 'cut', from: { x: 10, y: 20 }, to: { x: 110, y: 50 } }]);
    // 1 is red, 7 the white of layer 0.
    expect(layers).toMatchObject({ CUT: { name: 'CUT', colorIndex: 1 }, 0: { name: '0', colorIndex: 7 } });
  });

  test('gives a half circle the bulge 1, a quarter 0.414214, clockwise ones the negative', () => {
    // Autodesk DXF reference, LWPOLYLINE: the tangent of a quarter of the angle, negative clockwise.
    const { polylines } = read([
      path([{ start: { x: 0, y: 0 }, segments: [arc(20, 0, 10, 0, false)], closed: false }]),
      path([{ start: { x: 0, y: 0 }, segments: [arc(20, 0, 10, 0, true)], closed: false }]),
      path([{ start: { x: 10, y: 0 }, segments: [arc(20, 10, 10, 10, true)], closed: false }]),
      path([{ start: { x: 20, y: 10 }, segments: [arc(10, 0, 10, 10, false)], closed: false }]),
    ]);
    const bulges = polylines.map(({ vertices }) => vertices.map(({ bulge }) => bulge));
    // From left to right under the middle is counterclockwise to the eye; over it clockwise.
    expect(bulges).toEqual([
      [1, 0],
      [-1, 0],
      [-0.414214, 0],
      [0.414214, 0],
    ]);
  });

  test('an arch of span 96 and rise 12 has the radius 102, the bulge 0.25 and an arc of 99.95129', () => {
    // Davis, arch radius: (rise² + (span/2)²) / (2·rise); bulge 2·rise/span.
    const radius = (12 ** 2 + 48 ** 2) / (2 * 12);
    expect(radius).toBe(102);
    const outline = shapeOf('arch').outline({ x: 50, y: 20, width: 96, height: 120 }, { rise: 12 });
    const { polylines } = read([path([outline])]);
    const bulges = polylines[0]!.vertices.map(({ bulge }) => bulge).filter((bulge) => bulge !== 0);
    expect(bulges.map(Math.abs)).toEqual([0.25]);
    expect(chainLength(polylines[0]!) - 96 - 2 * 108).toBeCloseTo(99.95129, 4);
  });

  test('has arcs within a hundredth of a millimetre of an ellipse, where nothing else is asked', () => {
    const [chain] = read([path([shapeOf('oval').outline({ x: 20, y: 20, width: 200, height: 150 }, {})])]).polylines;
    const [a, b] = [100, 75];
    const off = chainPoints(chain!, 0.5).map((p) => {
      const [x, y] = [p.x - 120, p.y - (200 - 95)];
      // To first order, which is enough so near.
      return Math.abs(x ** 2 / a ** 2 + y ** 2 / b ** 2 - 1) / (2 * Math.hypot(x / a ** 2, y / b ** 2));
    });
    expect(off.length).toBeGreaterThan(1000);
    expect(Math.max(...off)).toBeLessThan(0.0102);
    // Nor finer than it need be: arcs, not a chord for each look.
    expect(chain!.vertices.length).toBeLessThan(100);
  });

  test('a full circle is two halves, closed without repeating a vertex', () => {
    const circle: Path = { start: { x: 120, y: 80 }, segments: [arc(120, 80, 80, 80, true)], closed: true };
    const [polyline] = read([path([circle])]).polylines;
    expect(polyline!.closed).toBe(true);
    expect(polyline!.vertices.map(({ x, y, bulge }) => [x, y, bulge])).toEqual([
      [120, 120, -1],
      [40, 120, -1],
    ]);
    expect(chainLength(polyline!)).toBeCloseTo(2 * Math.PI * 40, 6);
  });

  it('draws every shape as it is: length, place, closed by its flag, no vertex twice', () => {
    fc.assert(
      fc.property(randomShape, fc.constantFrom(0.01, 0.05), (made, tolerance) => {
        const outline = shapeOf(made.kind).outline(made.frame, made.fields);
        const text = writeDxf(drawing([path([outline])], { height: 900 }), { fonts: FONTS, dialect, tolerance });
        const [polyline] = readDxf(text).polylines;
        expect(polyline!.closed).toBe(true);
        const { vertices } = polyline!;
        for (const [i, v] of vertices.entries()) {
          const next = vertices[(i + 1) % vertices.length]!;
          expect(Math.hypot(v.x - next.x, v.y - next.y)).toBeGreaterThan(1e-6);
        }
        const long = pathLength(outline);
        expect(Math.abs(chainLength(polyline!) - long)).toBeLessThan(0.002 * long);
        const ys = chainPoints(polyline!, 1).map(({ y }) => y);
        expect(Math.abs(Math.max(...ys) - (900 - pathBox(outline).y))).toBeLessThan(tolerance + 0.01);
      }),
      { numRuns: 40 },
    );
  });

  test('words are outlines, dashes a declared line type, remarks ASCII; the same drawing gives the same text', () => {
    const items: readonly Item[] = [
      {
        kind: 'text',
        text: 'AB',
        at: { x: 20, y: 50 },
        anchor: 'start',
        size: 10,
        weight: 'regular',
        turn: 0,
        colour: 0.5,
      },
      path([{ start: { x: 0, y: 0 }, segments: [{ kind: 'line', to: { x: 9, y: 0 } }], closed: false }], 'dashed'),
    ];
    const { polylines, lineTypes } = read(items);
    // A has an outline and a hole, B one and two.
    expect(polylines.filter(({ closed }) => closed).length).toBe(5);
    expect(lineTypes).toContain('DASHED1');
    const text = writeDxf(drawing(items), { fonts: FONTS, dialect, comment: ['Grüße: 16 × 20'] });
    expect(text).toContain('16 x 20');
    expect(text).toMatch(/^[ -~\n]*$/u);
    expect(text).toBe(writeDxf(drawing(items), { fonts: FONTS, dialect, comment: ['Grüße: 16 × 20'] }));
  });

  test('carries no tag of its own in a remark, whatever a title is', () => {
    const titles = [
      'x\n  0\nEOF',
      'x\r\n0\r\nENDSEC',
      'x\u00850\u0085SECTION\u2028  2\u2029ENTITIES',
      '\n0\nLINE\n8\nCUT\n10\n0.0',
      '%%c{\\P;}\u0000\u001b\u0003',
      '０\nEOF',
    ];
    const file = (comment: readonly string[]): string =>
      writeDxf(drawing([path([shapeOf('oval').outline({ x: 20, y: 20, width: 200, height: 150 }, {})])]), {
        fonts: FONTS,
        dialect,
        comment,
      });
    const without = file([]);
    for (const title of titles) {
      const lines = file([title]).split('\n');
      const at = lines.indexOf('999');
      // One pair of lines, a code and its value; all else is as it is without.
      expect(lines.splice(at, 2)).toEqual(['999', expect.stringMatching(/^[ -~]*$/u)]);
      expect(lines.join('\n')).toBe(without);
    }
  });

  const ezdxf = hasEzdxf();
  it.skipIf(!ezdxf)(`is found without fault by another library${ezdxf ? '' : ': python has no ezdxf here'}`, () => {
    const items: readonly Item[] = [
      { kind: 'line', pen: 'dashed', from: { x: 10, y: 20 }, to: { x: 110, y: 50 } },
      path([shapeOf('oval').outline({ x: 20, y: 20, width: 200, height: 150 }, {})]),
    ];
    const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
    try {
      const file = join(folder, 'a.dxf');
      writeFileSync(file, writeDxf(drawing(items), { fonts: FONTS, dialect, comment: ['one'] }));
      const script = `import ezdxf, json, sys
d = ezdxf.readfile(sys.argv[1]); a = d.audit()
print(json.dumps([len(a.errors), len(a.fixes), d.units, sorted(e.dxftype() for e in d.modelspace()), [l.dxf.name for l in d.layers]]))`;
      const out = execFileSync('python3', ['-c', script, file], { encoding: 'utf8' });
      const [errors, fixes, units, entities, layers] = JSON.parse(out) as [number, number, number, string[], string[]];
      expect([errors, fixes, units]).toEqual([0, 0, 4]);
      expect(entities).toEqual(['LINE', dialect === 'r12' ? 'POLYLINE' : 'LWPOLYLINE']);
      expect(layers).toContain('CUT');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

function hasEzdxf(): boolean {
  try {
    execFileSync('python3', ['-c', 'import ezdxf'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

test('colours are numbered by their hue', () => {
  expect(['#ff0000', '#f0c000', '#009030', '#00c0c0', '#0060c0', '#8020c0'].map(colourIndex)).toEqual([
    1, 2, 3, 4, 5, 6,
  ]);
  expect([0, 0.5, 0.9].map(colourIndex)).toEqual([7, 8, 9]);
  expect(colourIndex('#c00040')).toBe(1);
});
