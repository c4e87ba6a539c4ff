import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fontkit, { type Font, type Glyph } from '@pdf-lib/fontkit';
import { SOURCES } from '../../src/dev/font-set.ts';

const require = createRequire(import.meta.url);

/** The fonts as their makers publish them, opened by fontkit: what the prepared ones are measured against. */
export const FULL: readonly { readonly id: string; readonly weight: 'regular' | 'bold'; readonly font: Font }[] =
  SOURCES.map(({ id, weight, file }) => ({ id, weight, font: fontkit.create(readFileSync(require.resolve(file))) }));

export const WEIGHTS = ['regular', 'bold'] as const;

export function fullFont(id: string): Font {
  const found = FULL.find((full) => full.id === id);
  if (found === undefined) throw new RangeError(id);
  return found.font;
}

export const glyphOf = (id: string, codePoint: number): Glyph => fullFont(id).glyphForCodePoint(codePoint);

interface OpenPath {
  readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[];
}

/** The outline's steps, font units. */
export const commandsOf = (glyph: Glyph): OpenPath['commands'] =>
  (glyph.path as Glyph['path'] & OpenPath).commands.map(({ command, args }) => ({ command, args: [...args] }));
