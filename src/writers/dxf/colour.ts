import { rgb } from '../colour.ts';

/**
 * The numbered colour nearest in hue to a grey from 0 to 1 or to `#rrggbb`: 1 red, 2 yellow, 3 green, 4 cyan, 5 blue,
 * 6 magenta, 7 black or white, 8 dark grey, 9 light grey (Autodesk DXF reference; colours beyond these are by each
 * program's palette, and true colours came after the dialects written here).
 */
export function colourIndex(colour: number | string): number {
  const [r, g, b] = typeof colour === 'number' ? [colour, colour, colour] : rgb(colour).map((part) => part / 255);
  const [most, least] = [Math.max(r!, g!, b!), Math.min(r!, g!, b!)];
  const chroma = most - least;
  if (chroma < 0.15) return most < 0.35 ? 7 : most < 0.6 ? 8 : 9;
  const sixth =
    most === r ? (((g! - b!) / chroma) % 6) + 6 : most === g ? (b! - r!) / chroma + 2 : (r! - g!) / chroma + 4;
  return (Math.round(sixth) % 6) + 1;
}
