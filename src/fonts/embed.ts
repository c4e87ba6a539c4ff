import { bytesOfBase64 } from './base64.ts';
import { placesOf } from './faces.ts';
import type { EmbeddedFont, FontId, RareFonts, Run, Weight } from './model.ts';
import { files } from './prepared/files.ts';

/** The font of a run's id, ready to be embedded. The same object each time for the prepared fonts. */
export function fontFor(id: FontId, rare?: RareFonts): EmbeddedFont {
  const found = PREPARED.get(id)?.() ?? rare?.faces.find((face) => face.table.id === id)?.embedded;
  if (found === undefined) throw new RangeError(`no font has the id ${id}`);
  return found;
}

/** Its bytes are decoded when a font is first asked for: few documents need them all. */
const PREPARED: ReadonlyMap<FontId, () => EmbeddedFont> = new Map(
  files.map((file) => {
    let font: EmbeddedFont | undefined;
    return [
      file.id,
      () => {
        font ??= { ...file, fontFile: bytesOfBase64(file.fontFile), toUnicode: bytesOfBase64(file.toUnicode) };
        return font;
      },
    ];
  }),
);

/** The text as stretches of glyphs in one font each; none where nothing of it is drawn. */
export function runs(text: string, weight: Weight, rare?: RareFonts): Run[] {
  const found: { font: FontId; glyphs: number[]; advance: number }[] = [];
  for (const { table, glyph } of placesOf(text, weight, rare)) {
    let run = found.at(-1);
    if (run?.font !== table.id) {
      run = { font: table.id, glyphs: [], advance: 0 };
      found.push(run);
    }
    run.glyphs.push(glyph);
    run.advance += table.advances[glyph]! / table.unitsPerEm;
  }
  return found;
}
