import { placesOf } from './faces.ts';
import type { EmbeddedFont, FontId, Fonts, Run, Weight } from './model.ts';

/** The font of a run's id, ready to be embedded. */
export function fontFor(id: FontId, { files }: Fonts): EmbeddedFont {
  if (files === undefined) throw new TypeError('these fonts were loaded without the files to embed');
  const found = files.find((file) => file.id === id);
  if (found === undefined) throw new RangeError(`no font has the id ${id}`);
  return found;
}

/** The text as stretches of glyphs in one font each; none where nothing of it is drawn. */
export function runs(text: string, weight: Weight, fonts: Fonts): Run[] {
  const found: { font: FontId; glyphs: number[]; advance: number }[] = [];
  for (const { table, glyph } of placesOf(text, weight, fonts)) {
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
