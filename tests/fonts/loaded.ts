import { loadFonts } from '../../src/fonts/load.ts';

/** With every part, for all that the program says itself. */
export const FONTS = await loadFonts([], { outlines: true, files: true });
