import fontkit from '@pdf-lib/fontkit';
import pako from 'pako';
import { bytesOfBase64 } from './base64.ts';
import type { Face } from './model.ts';
import { subsetFace } from './subset.ts';

/**
 * Characters that are not prepared but that a whole font holds, ready to be measured, embedded and drawn as outlines.
 * Slow, as it reads whole fonts with fontkit. The same characters give the same bytes.
 */
export async function rareFaces(wanted: readonly number[]): Promise<readonly Face[]> {
  const { full } = await import('./prepared/full.ts');
  const faces: Face[] = [];
  const found: Record<Face['table']['weight'], Set<number>> = { regular: new Set(), bold: new Set() };
  for (const { name, file } of full) {
    const rest = wanted.filter((codePoint) => !found[name.weight].has(codePoint));
    if (rest.length === 0) continue;
    const font = fontkit.create(pako.inflate(bytesOfBase64(file)));
    const held = rest.filter((codePoint) => font.hasGlyphForCodePoint(codePoint));
    if (held.length === 0) continue;
    for (const codePoint of held) found[name.weight].add(codePoint);
    faces.push(await subsetFace(font, name, held));
  }
  return faces;
}
