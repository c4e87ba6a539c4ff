import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { pattern } from '../../src/documents/pattern/pattern.ts';
import { type Document, layersOf } from '../../src/drawing/document.ts';
import type { Drawing, LineItem } from '../../src/drawing/model.ts';
import { solveJob } from '../../src/index.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { writeSvg } from '../writers/svg-in-node.ts';
import { canonical, canonicalDrawing, canonicalJson } from './canonical.ts';
import { CASES } from './cases.ts';
import { compareCase, compareNames, type Failure, type Outputs } from './compare.ts';
import { makePdf } from './make.ts';
import type { Strokes } from './pdf-text.ts';
import { packed } from './pictures.ts';
import { readReferences, referenceFolders, showFailures, writeReferences } from './store.ts';
import { svgText } from './svg-text.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const kinds = (failures: readonly Failure[]): string[] => failures.map((f) => `${f.file} ${f.kind}`);

function drawingOf(name: string): Drawing {
  const each = CASES.find((found) => found.name === name)!;
  const solved = solveJob(each.job, { fonts: FONTS, file: each.file });
  if (!solved.ok) throw new Error(`${name} is no good job`);
  const { mat, strokes, job } = solved.value;
  return pattern(mat, strokes, job, 0, { fonts: FONTS }).drawing;
}

/** The drawing on one sheet as large as itself. */
async function outputsOf(drawing: Drawing, strokes: Strokes = 'each'): Promise<Outputs> {
  const { width, height } = drawing;
  const document: Document = {
    title: drawing.title,
    subject: 'test',
    language: 'en',
    layers: layersOf(drawing),
    pages: [
      {
        name: 'A1',
        label: 'A1',
        paper: { width, height },
        scale: { x: 1, y: 1 },
        frames: [{ drawing, clip: { x: 0, y: 0, width, height }, turn: 0, at: { x: 0, y: 0 } }],
      },
    ],
  };
  return new Map([
    ['drawing.json', encode(canonicalDrawing(drawing))],
    ['drawing.svg', encode(writeSvg(drawing, { fonts: FONTS }))],
    ...(await makePdf('drawing.pdf', await writePdf(document, { fonts: FONTS }), strokes, [1])),
  ]);
}

/** The same drawing with the first line of a group moved by 0.1 mm, square to itself. */
function nudged(drawing: Drawing, groupName: string): Drawing {
  const groups = drawing.groups.map((group) => {
    const first = group.items.findIndex((item) => item.kind === 'line');
    if (group.name !== groupName || first < 0) return group;
    const line = group.items[first] as LineItem;
    const upright = line.from.x === line.to.x;
    const move = ({ x, y }: { x: number; y: number }) => (upright ? { x: x + 0.1, y } : { x, y: y + 0.1 });
    return { ...group, items: group.items.with(first, { ...line, from: move(line.from), to: move(line.to) }) };
  });
  return { ...drawing, groups };
}

describe('a line that is moved by 0.1 mm', { timeout: 120_000 }, () => {
  const drawing = drawingOf('lopsided');

  test.each(['board', 'cut', 'face', 'marks', 'centre'])('is seen in every kind of reference: %s', async (group) => {
    const references = await outputsOf(drawing);
    expect(compareCase('a', references, await outputsOf(drawing))).toEqual([]);
    const failures = compareCase('a', references, await outputsOf(nudged(drawing, group)));
    expect(kinds(failures).sort()).toEqual([
      'drawing-page-01.png different',
      'drawing.json different',
      'drawing.pdf.txt different',
      'drawing.svg different',
    ]);
  });

  test.each(['board', 'cut', 'marks'])(
    'is seen by text alone where the lines of a layer are summed up: %s',
    async (group) => {
      const references = await outputsOf(drawing, 'summed');
      const failures = compareCase('a', references, await outputsOf(nudged(drawing, group), 'summed'));
      const told = failures.find(({ file }) => file === 'drawing.pdf.txt');
      const { label } = drawing.groups.find(({ name }) => name === group)!;
      expect(told?.detail).toContain(`in ${label}`);
    },
  );
});

describe('comparing', () => {
  const a = new Map([['a.txt', encode('one\ntwo\n')]]);

  test('a missing reference, a difference and an orphan each fail', () => {
    expect(compareCase('c', a, a)).toEqual([]);
    expect(kinds(compareCase('c', new Map(), a))).toEqual(['a.txt missing']);
    expect(kinds(compareCase('c', a, new Map()))).toEqual(['a.txt orphan']);
    const [difference] = compareCase('c', a, new Map([['a.txt', encode('one\nthree\n')]]));
    expect(difference!.detail).toBe('line 2: expected two, got three');
  });

  test('a folder of no case and a case listed twice each fail', () => {
    expect(compareNames(['a', 'b'], ['a'])).toEqual([]);
    expect(compareNames(['a'], ['a', 'b']).map((f) => f.kind)).toEqual(['orphan']);
    expect(compareNames(['a', 'B', 'b'], []).map((f) => f.kind)).toEqual(['duplicate']);
  });

  test('one pixel by one step of grey, another size and a heavy picture each fail', () => {
    const rgba = new Uint8Array(4 * 100 * 100).fill(255);
    const white = { width: 100, height: 100, rgba };
    const spot = {
      ...white,
      rgba: rgba
        .with(4 * 5050, 254)
        .with(4 * 5050 + 1, 254)
        .with(4 * 5050 + 2, 254),
    };
    const one = new Map([['a.png', packed(white)]]);
    const [difference] = compareCase('c', one, new Map([['a.png', packed(spot)]]));
    expect(difference!.detail).toBe('1 pixels differ');
    expect(difference!.difference).toBeDefined();
    const wide = new Map([['a.png', packed({ width: 200, height: 50, rgba })]]);
    expect(compareCase('c', one, wide)[0]!.detail).toContain('200 × 50 made');
    let seed = 1;
    const noise = Uint8Array.from({ length: 4 * 300 * 300 }, (_, i) => {
      seed = (seed * 48271) % 2147483647;
      return i % 4 === 3 ? 255 : seed % 256;
    });
    const heavy = new Map([['a.png', packed({ width: 300, height: 300, rgba: noise })]]);
    expect(kinds(compareCase('c', new Map(), heavy))).toEqual(['a.png heavy']);
  });

  test('numbers are canonical', () => {
    expect(canonical({ b: -0, a: [0.1 + 0.2, 1e-9], c: undefined })).toBe('{"a": [0.3, 0], "b": 0}');
    expect(() => canonical([Number.NaN])).toThrow('no place');
    expect(JSON.parse(canonicalJson({ a: 'x'.repeat(100), b: [{ c: 'y'.repeat(100) }] }))).toEqual({
      a: 'x'.repeat(100),
      b: [{ c: 'y'.repeat(100) }],
    });
  });
});

test('of an SVG every byte counts, and outlines are named by their hash', () => {
  const outline = `M0 0${'l1 1'.repeat(60)}`;
  const svg = `<svg>\n<path d="${outline}"/>\n<path d="M0 0h1"/>\n</svg>\n`;
  const text = svgText(encode(svg));
  expect(text).toContain('<path d="M0 0h1"/>');
  expect(text.length).toBeLessThan(svg.length);
  for (const changed of [svg.replace('l1 1"', 'l1 2"'), `${svg}\n`, svg.replace('h1', 'h2')])
    expect(svgText(encode(changed))).not.toBe(text);
});

describe('writing references', { timeout: 120_000 }, () => {
  test('brings the folder to what was made, and shows what differed', () => {
    const top = mkdtempSync(join(tmpdir(), 'matwright-'));
    try {
      const [references, out] = [join(top, 'golden'), join(top, 'out')];
      const made = (words: string): Outputs => new Map([['a.txt', encode(words)]]);
      const failing = (outputs: Outputs): Failure[] => compareCase('c', readReferences('c', references), outputs);
      writeReferences(failing(made('one')), references);
      expect(referenceFolders(references)).toEqual(['c']);
      expect(failing(made('one'))).toEqual([]);
      showFailures('c', failing(made('<two>')), out);
      const page = readFileSync(join(out, 'index.html'), 'utf8');
      expect(page).toContain('c/a.txt: different, line 1: expected one, got &#60;two&#62;');
      expect(page).toContain('href="c/a.actual.txt"');
      expect(readFileSync(join(out, 'c/a.expected.txt'), 'utf8')).toBe('one');
      showFailures('c', [], out);
      expect(() => readFileSync(join(out, 'index.html'))).toThrow();
      writeReferences(failing(new Map([['b.txt', encode('three')]])), references);
      expect([...readReferences('c', references).keys()]).toEqual(['b.txt']);
    } finally {
      rmSync(top, { recursive: true });
    }
  });

  const write = (args: readonly string[], env: NodeJS.ProcessEnv) =>
    spawnSync(process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'write.ts'), ...args], {
      encoding: 'utf8',
      env,
    });

  test('is refused where CI is set', () => {
    const { status, stderr } = write(['lopsided'], { ...process.env, CI: 'true' });
    expect(stderr).toContain('never where CI is set');
    expect(status).toBe(2);
  });

  test('an unknown case is refused with the nearest', () => {
    const { CI: _, ...env } = process.env;
    const { status, stderr } = write(['lopsidid'], env);
    expect(stderr).toContain('did you mean lopsided?');
    expect(status).toBe(2);
  });
});
