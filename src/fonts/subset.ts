import type { Font, Glyph, Path, Subset } from '@pdf-lib/fontkit';
import pako from 'pako';
import type { Face, FaceOutlines, FontId, Metrics, Weight } from './model.ts';

export interface FaceName {
  readonly id: FontId;
  readonly weight: Weight;
  /** PostScript name without a tag. Not the font's own: a changed font must not carry a reserved name. */
  readonly name: string;
}

/** What fontkit has but its types leave out. `glyphs`: old glyph ids by new ones; the list grows while encoding. */
interface OpenSubset extends Subset {
  readonly glyphs: number[];
}
interface OpenPath extends Path {
  readonly commands: readonly Command[];
}
interface Command {
  readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  readonly args: readonly number[];
}

/** Cuts a TrueType font down to `codePoints`, which it must hold, each once and in rising order. */
export async function subsetFace(font: Font, name: FaceName, codePoints: readonly number[]): Promise<Face> {
  const subset = font.createSubset() as OpenSubset;
  for (const codePoint of codePoints) {
    const { id } = font.glyphForCodePoint(codePoint);
    if (id === 0) throw new RangeError(`${name.name} lacks U+${codePoint.toString(16)}`);
    const before = subset.glyphs.length;
    subset.includeGlyph(id);
    // A glyph that shows two code points (Δ and ∆) is held twice, so that ToUnicode can tell them apart.
    if (subset.glyphs.length === before) subset.glyphs.push(id);
  }
  const file = await encoded(subset);
  const glyphs = subset.glyphs.map((id) => font.getGlyph(id));
  const metrics = metricsOf(font);
  const perMille = 1000 / font.unitsPerEm;
  const { minX, minY, maxX, maxY } = font.bbox;
  return {
    table: {
      id: name.id,
      weight: name.weight,
      unitsPerEm: font.unitsPerEm,
      metrics,
      codePoints,
      advances: glyphs.map((glyph) => glyph.advanceWidth),
      tops: glyphs.map((glyph) => finite(glyph.bbox.maxY)),
      bottoms: glyphs.map((glyph) => finite(glyph.bbox.minY)),
    },
    embedded: {
      id: name.id,
      postScriptName: `${tag(name.name, subset.glyphs)}+${name.name}`,
      bbox: [minX * perMille, minY * perMille, maxX * perMille, maxY * perMille],
      ascent: metrics.ascent * 1000,
      descent: -metrics.descent * 1000,
      capHeight: metrics.capHeight * 1000,
      xHeight: metrics.xHeight * 1000,
      italicAngle: font.italicAngle,
      stemV: stemWidth(font) * perMille,
      flags: SYMBOLIC,
      fontFile: pako.deflate(file),
      fontFileLength: file.length,
      toUnicode: pako.deflate(toUnicode(codePoints)),
      widths: glyphs.map((glyph) => glyph.advanceWidth * perMille),
    },
    outlines: glyphs.map(outlineOf) satisfies FaceOutlines,
  };
}

/** With characters outside the Adobe standard Latin set (ISO 32000-1, table 123, bit 3). */
const SYMBOLIC = 4;

const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

function encoded(subset: Subset): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve) => {
    subset
      .encodeStream()
      .on('data', (chunk) => chunks.push(chunk))
      .on('end', () => {
        const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
        let at = 0;
        for (const chunk of chunks) {
          bytes.set(chunk, at);
          at += chunk.length;
        }
        resolve(bytes);
      });
  });
}

/** Heights are read off the letters themselves, as some fonts state none. */
function metricsOf(font: Font): Metrics {
  const ink = (letter: string) => font.glyphForCodePoint(letter.charCodeAt(0)).bbox;
  return {
    ascent: font.ascent / font.unitsPerEm,
    descent: -font.descent / font.unitsPerEm,
    capHeight: ink('H').maxY / font.unitsPerEm,
    xHeight: ink('x').maxY / font.unitsPerEm,
    descender: -Math.min(...[...'gjpqy'].map((letter) => ink(letter).minY)) / font.unitsPerEm,
  };
}

/** Width of the left stem of H, where its outline crosses a quarter of its height. */
function stemWidth(font: Font): number {
  const glyph = font.glyphForCodePoint('H'.charCodeAt(0));
  const height = glyph.bbox.maxY / 4;
  const crossings: number[] = [];
  let start: readonly number[] = [0, 0];
  let last = start;
  for (const { command, args } of commandsOf(glyph)) {
    const to = command === 'closePath' ? start : args.slice(-2);
    if (command === 'moveTo') start = to;
    else if (Math.min(last[1]!, to[1]!) <= height && height < Math.max(last[1]!, to[1]!)) crossings.push(to[0]!);
    last = to;
  }
  const [left = 0, right = 0] = crossings.sort((a, b) => a - b);
  return right - left;
}

/** Six capitals that tell subsets of one font apart (ISO 32000-1, 9.6.4): FNV-1a over name and glyphs, in base 26. */
function tag(name: string, glyphs: readonly number[]): string {
  let hash = 0x811c9dc5;
  for (const id of [...Array.from(name, (letter) => letter.charCodeAt(0)), ...glyphs]) {
    hash = Math.imul(hash ^ (id & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (id >> 8), 0x01000193);
  }
  let rest = hash >>> 0;
  let letters = '';
  for (let i = 0; i < 6; i++) {
    letters += String.fromCharCode(65 + (rest % 26));
    rest = Math.floor(rest / 26);
  }
  return letters;
}

const hex = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');

/** UTF-16BE as hex digits. */
function utf16(codePoint: number): string {
  const text = String.fromCodePoint(codePoint);
  return [...Array(text.length).keys()].map((i) => hex(text.charCodeAt(i))).join('');
}

/**
 * ToUnicode CMap (ISO 32000-1, 9.10.3): from glyph i + 1 to code point i. At most 100 lines a block (Adobe Technical
 * Note 5014). Glyph 0 and shared parts have no meaning of their own and stay out.
 */
function toUnicode(codePoints: readonly number[]): Uint8Array {
  const lines = codePoints.map((codePoint, i) => `<${hex(i + 1)}> <${utf16(codePoint)}>`);
  const blocks: string[] = [];
  for (let i = 0; i < lines.length; i += 100) {
    const block = lines.slice(i, i + 100);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar\n`);
  }
  const text = [
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n',
    '/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n',
    '1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n',
    ...blocks,
    'endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n',
  ].join('');
  return Uint8Array.from(text, (character) => character.charCodeAt(0));
}

const commandsOf = (glyph: Glyph): readonly Command[] => (glyph.path as OpenPath).commands;

/** Each number relative to the last point, as that makes them short. */
function outlineOf(glyph: Glyph): string {
  let x = 0;
  let y = 0;
  return commandsOf(glyph)
    .map(({ command, args }) => {
      const steps = args.map((value, i) => value - (i % 2 === 0 ? x : y));
      if (command !== 'closePath') [x, y] = args.slice(-2) as [number, number];
      return `${letterOf(command)}${steps.join(' ').replaceAll(' -', '-')}`;
    })
    .join('');
}

function letterOf(command: Command['command']): string {
  switch (command) {
    case 'moveTo':
      return 'm';
    case 'lineTo':
      return 'l';
    case 'quadraticCurveTo':
      return 'q';
    case 'closePath':
      return '';
    case 'bezierCurveTo':
      throw new RangeError('a TrueType outline has no cubic curves');
  }
}
