import { defined } from '../problems/defined.ts';
import { bytesOfBase64 } from './base64.ts';
import { rareCharacters } from './coverage.ts';
import { BETWEEN_OUTLINES, type EmbeddedFont, type Face, type FontId, type Fonts } from './model.ts';

/** What is wanted beside the tables to measure with. */
export interface FontParts {
  /** For letters that are drawn as paths or cut. */
  readonly outlines?: boolean;
  /** For files that carry their fonts. */
  readonly files?: boolean;
}

/**
 * The fonts for these texts and for everything that the program says itself. Each part is read only where it is wanted;
 * characters that nothing but the whole fonts have take a quarter of a second, so only where the texts have some.
 * The same texts give the same fonts.
 */
export async function loadFonts(texts: Iterable<string>, wanted: FontParts = {}): Promise<Fonts> {
  const { tables, everything } = await import('./prepared/tables.ts');
  const characters = rareCharacters(texts, tables, everything);
  if (characters.length > 0) return fontsOf(tables, await (await import('./rare.ts')).rareFaces(characters), wanted);
  const { outlines = false, files = false } = wanted;
  const key = `${outlines} ${files}`;
  const usual = USUAL.get(key) ?? fontsOf(tables, [], wanted);
  USUAL.set(key, usual);
  return usual;
}

/** Without rare characters they are always the same, and what was measured with them is known by them. */
const USUAL = new Map<string, Promise<Fonts>>();

async function fontsOf(tables: Fonts['tables'], faces: readonly Face[], wanted: FontParts): Promise<Fonts> {
  return {
    tables,
    rare: faces.map(({ table }) => table),
    ...defined({
      outlines: wanted.outlines === true ? await outlinesWith(faces) : undefined,
      files: wanted.files === true ? await filesWith(faces) : undefined,
    }),
  };
}

async function outlinesWith(faces: readonly Face[]): Promise<Readonly<Record<FontId, string>>> {
  const { outlines } = await import('./prepared/outlines.ts');
  if (faces.length === 0) return outlines;
  const rare = faces.map((face) => [face.table.id, face.outlines.join(BETWEEN_OUTLINES)] as const);
  return { ...outlines, ...Object.fromEntries(rare) };
}

async function filesWith(faces: readonly Face[]): Promise<readonly EmbeddedFont[]> {
  const { files } = await import('./prepared/files.ts');
  const prepared = files.map((file) => ({
    ...file,
    fontFile: bytesOfBase64(file.fontFile),
    toUnicode: bytesOfBase64(file.toUnicode),
  }));
  return [...prepared, ...faces.map(({ embedded }) => embedded)];
}
