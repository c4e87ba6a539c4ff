import { drawnCodePoints } from '../fonts/characters.ts';
import { familyTable, holds } from '../fonts/faces.ts';
import { textWidth } from '../fonts/measure.ts';
import type { Fonts, Weight } from '../fonts/model.ts';
import { textOutline } from '../fonts/outlines.ts';
import { bridged, windowsOf } from '../geometry/bridges.ts';
import { withoutLoops } from '../geometry/loops.ts';
import { type Path, placedPath } from '../geometry/path.ts';

export interface LetterStyle {
  readonly weight: Weight;
  /** Height of the capitals. */
  readonly height: number;
  /** Added after each letter. */
  readonly spacing: number;
  /** Width of what ties an island to the board; undefined where islands are refused. */
  readonly bridge?: number;
}

/** One window of a letter; a letter has several where bridges part it, or where it has a dot. */
export interface LetterPart {
  readonly letter: string;
  /** Which letter of the text, from 0. */
  readonly index: number;
  /** Clockwise, without islands, the base line at y = 0. */
  readonly path: Path;
}

export type LetterWindows =
  | { readonly ok: true; readonly parts: readonly LetterPart[]; readonly bridges: number }
  | Refused;

interface Refused {
  readonly ok: false;
  readonly message: string;
  readonly hint: string;
}

const refusal = (message: string, hint: string): Refused => ({ ok: false, message, hint });

/** A text as windows to be cut, from the fonts' outlines; letters that hold an island are bridged or refused. */
export function letterWindows(
  text: string,
  { weight, height, spacing, bridge }: LetterStyle,
  fonts: Fonts,
): LetterWindows {
  const size = height / familyTable(weight, fonts).metrics.capHeight;
  const parts: LetterPart[] = [];
  let bridges = 0;
  let x = 0;
  for (const [index, codePoint] of drawnCodePoints(text).entries()) {
    const letter = String.fromCodePoint(codePoint);
    const made = letterOf(codePoint, weight, size, bridge, fonts);
    if (!made.ok) return made;
    bridges += made.bridges;
    const at = x;
    for (const path of made.paths)
      parts.push({ letter, index, path: placedPath(path, (p) => ({ x: p.x + at, y: p.y })) });
    x += textWidth(letter, weight, size, fonts) + spacing;
  }
  if (parts.length === 0) return refusal('the text has nothing to cut', 'write at least one letter');
  return { ok: true, parts, bridges };
}

type Letter = { readonly ok: true; readonly paths: readonly Path[]; readonly bridges: number } | Refused;

/** Letters come again within a text, and the same text is asked for by every document. */
const KNOWN = new WeakMap<object, Map<string, Letter>>();
const MOST_KNOWN = 500;

function letterOf(codePoint: number, weight: Weight, size: number, bridge: number | undefined, fonts: Fonts): Letter {
  const letters = KNOWN.get(fonts.outlines ?? fonts) ?? new Map<string, Letter>();
  KNOWN.set(fonts.outlines ?? fonts, letters);
  const key = `${codePoint} ${weight} ${size} ${bridge}`;
  const known = letters.get(key);
  if (known !== undefined) return known;
  const made = oneLetter(codePoint, weight, size, bridge, fonts);
  if (letters.size >= MOST_KNOWN) letters.clear();
  letters.set(key, made);
  return made;
}

function oneLetter(codePoint: number, weight: Weight, size: number, bridge: number | undefined, fonts: Fonts): Letter {
  const letter = String.fromCodePoint(codePoint);
  if (!holds(fonts.tables, codePoint)) {
    return refusal(`the bundled font has no ${letter} to cut`, 'write it in other letters, or give an outline');
  }
  const found = windowsOf(textOutline(letter, weight, size, fonts).map(withoutLoops));
  if (!found.ok) {
    const why = found.why === 'nested' ? 'has a window within an island' : 'has strokes that lie over one another';
    return refusal(`${letter} ${why}, which no single cut makes`, 'leave it out, or give an outline of your own');
  }
  const paths: Path[] = [];
  let bridges = 0;
  for (const window of found.windows) {
    if (window.islands.length > 0 && bridge === undefined) {
      const message = `the inside of ${letter} would fall out`;
      return refusal(message, 'write islands: bridge, or take letters without an island');
    }
    const made = bridged(window, bridge ?? 0);
    if (made === undefined) {
      const message = `the island of ${letter} has no room for its bridges`;
      return refusal(message, 'make the letters larger or bolder, or the bridge narrower');
    }
    bridges += made.bridges;
    paths.push(...made.parts);
  }
  return { ok: true, paths, bridges };
}
