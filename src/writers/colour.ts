/** Red, green, blue, 0 to 255, of `#rrggbb`; anything else is a mistake of the program and throws. */
export function rgb(colour: string): readonly [number, number, number] {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/iu.exec(colour);
  if (match === null) throw new TypeError(`${JSON.stringify(colour)} is no colour of the form #rrggbb`);
  return [Number.parseInt(match[1]!, 16), Number.parseInt(match[2]!, 16), Number.parseInt(match[3]!, 16)];
}

/** `#rrggbb` of a grey from 0 (black) to 1 (white), or of a colour that already is one. */
export function hexColour(colour: number | string): string {
  const parts = typeof colour === 'number' ? new Array<number>(3).fill(Math.round(colour * 255)) : rgb(colour);
  return `#${parts.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}
