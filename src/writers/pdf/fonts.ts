import { type PDFContext, PDFName, type PDFRef, PDFString } from 'pdf-lib';
import type { EmbeddedFont, FontId, Run } from '../../fonts/model.ts';
import { decimal } from '../decimal.ts';
import type { ShownRun } from './content.ts';
import { streamOf } from './stream.ts';

/** Which glyphs of which font a file shows, and the names that its content knows the fonts by. */
export class UsedFonts {
  readonly #used = new Map<FontId, { readonly name: string; readonly glyphs: Set<number> }>();

  shown({ font: id, glyphs, advance }: Run): ShownRun {
    let font = this.#used.get(id);
    if (font === undefined) {
      font = { name: `F${this.#used.size + 1}`, glyphs: new Set() };
      this.#used.set(id, font);
    }
    for (const glyph of glyphs) font.glyphs.add(glyph);
    return { font: font.name, glyphs: hex(glyphs), advance };
  }

  /** The fonts in the order of their first use. */
  entries(): readonly { readonly id: FontId; readonly name: string; readonly glyphs: ReadonlySet<number> }[] {
    return [...this.#used].map(([id, { name, glyphs }]) => ({ id, name, glyphs }));
  }
}

/** A Type0 font over a CIDFontType2 whose codes are its glyph ids (ISO 32000-1, 9.7.4 and 9.7.6); its file is written as prepared. */
export function writeFont(context: PDFContext, font: EmbeddedFont, glyphs: ReadonlySet<number>): PDFRef {
  const file = streamOf(context, font.fontFile, { Length1: font.fontFileLength, Filter: 'FlateDecode' });
  const descriptor = context.obj({
    Type: 'FontDescriptor',
    FontName: font.postScriptName,
    Flags: font.flags,
    FontBBox: font.bbox.map(thousandths),
    ItalicAngle: thousandths(font.italicAngle),
    Ascent: thousandths(font.ascent),
    Descent: thousandths(font.descent),
    CapHeight: thousandths(font.capHeight),
    XHeight: thousandths(font.xHeight),
    StemV: thousandths(font.stemV),
    FontFile2: context.register(file),
  });
  const descendant = context.obj({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    BaseFont: font.postScriptName,
    CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
    FontDescriptor: context.register(descriptor),
    W: widths(font, glyphs),
    CIDToGIDMap: 'Identity',
  });
  const toUnicode = streamOf(context, font.toUnicode, { Filter: 'FlateDecode' });
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'Type0',
      BaseFont: font.postScriptName,
      Encoding: PDFName.of('Identity-H'),
      DescendantFonts: [context.register(descendant)],
      ToUnicode: context.register(toUnicode),
    }),
  );
}

/** `first [width …]` for every run of neighbouring glyph ids (ISO 32000-1, 9.7.4.3). */
function widths(font: EmbeddedFont, glyphs: ReadonlySet<number>): (number | number[])[] {
  const list: (number | number[])[] = [];
  let next = -1;
  let run: number[] = [];
  for (const glyph of [...glyphs].sort((a, b) => a - b)) {
    if (glyph !== next) {
      run = [];
      list.push(glyph, run);
    }
    run.push(thousandths(font.widths[glyph]!));
    next = glyph + 1;
  }
  return list;
}

const CODES: string[] = [];

function hex(glyphs: readonly number[]): string {
  let text = '';
  for (const glyph of glyphs) {
    const code = CODES[glyph] ?? glyph.toString(16).padStart(4, '0');
    CODES[glyph] = code;
    text += code;
  }
  return text;
}

const thousandths = (value: number): number => Number(decimal(value, 3));
