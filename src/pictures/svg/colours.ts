/** The sixteen colours that have had names since HTML 4 (its section 6.5; from memory), and CSS's other spelling of gray. */
const NAMED: Readonly<Record<string, string>> = {
  black: '#000000',
  silver: '#c0c0c0',
  gray: '#808080',
  grey: '#808080',
  white: '#ffffff',
  maroon: '#800000',
  red: '#ff0000',
  purple: '#800080',
  fuchsia: '#ff00ff',
  green: '#008000',
  lime: '#00ff00',
  olive: '#808000',
  yellow: '#ffff00',
  navy: '#000080',
  blue: '#0000ff',
  teal: '#008080',
  aqua: '#00ffff',
};

const PART = String.raw`\s*(\d+(?:\.\d+)?)(%?)\s*`;
const RGB = new RegExp(`^rgb\\(${PART},${PART},${PART}\\)$`, 'i');

/** `#rrggbb` of a colour as SVG writes it; undefined where it is none of those. */
export function colourOf(text: string): string | undefined {
  const given = text.trim().toLowerCase();
  if (/^#[0-9a-f]{6}$/.test(given)) return given;
  if (/^#[0-9a-f]{3}$/.test(given)) return `#${[...given.slice(1)].map((digit) => digit + digit).join('')}`;
  const parts = RGB.exec(given);
  if (parts === null) return Object.hasOwn(NAMED, given) ? NAMED[given] : undefined;
  const value = (i: number): number => Math.min(255, Math.round(Number(parts[i]) * (parts[i + 1] === '%' ? 2.55 : 1)));
  return `#${[1, 3, 5].map((i) => value(i).toString(16).padStart(2, '0')).join('')}`;
}
