/**
 * Which fonts, and what of them is prepared at build time: the characters that job texts and our own labels are likely
 * to hold. Anything else that a full font has goes the slower way of `fonts/rare.ts`.
 *
 * Why this family. Wanted: one free family, regular and bold, static TrueType, that a bench reads at arm's length off a
 * black-and-white printer. Measured in the files, of 95 + 96 + 128 Latin, 90 Vietnamese, 69 Greek with tonos, 96 + 28
 * Cyrillic, 9 fractions, fraction slash, 20 raised and lowered digits, primes, dashes, × ° ± − and 8 arrows:
 *
 *                    lacks   figures, em   width of I and l, em   x-height, em   stem, regular and bold, em
 *     IBM Plex Sans  none    all 0.600     0.280  0.156 tail      0.516          0.084  0.152
 *     Source Sans 3  none    all 0.497     0.083  0.135 tail      0.486          0.083  0.147
 *     Inter          ŉ       0.407–0.648   0.093  0.088           0.546          0.093  0.149
 *
 * Plex has all, figures of one width, serifs on I and a tail on l, so that I, l and 1 cannot be taken for each other,
 * and the larger x-height of the two that qualify. Its figures are wide: a narrow place needs `fitSize`.
 * Signs that it lacks (BORROWED, and all rare characters that it lacks too) come from DejaVu Sans.
 */

export interface Source {
  readonly id: string;
  readonly weight: 'regular' | 'bold';
  /** Name of the cut-down font. The licences reserve the fonts' own names for unchanged copies. */
  readonly name: string;
  /** Inside node_modules. */
  readonly file: string;
  /** First and last code point. */
  readonly ranges: readonly (readonly [number, number])[];
}

/** The family: every one of these characters must be there in both weights. */
const FAMILY: Source['ranges'] = [
  [0x20, 0x7e],
  [0xa0, 0xac],
  [0xae, 0xff],
  [0x100, 0x17f],
  [0x18f, 0x18f],
  [0x192, 0x192],
  [0x1a0, 0x1a1],
  [0x1af, 0x1b0],
  [0x1cd, 0x1dc],
  [0x1fa, 0x1ff],
  [0x218, 0x21b],
  [0x259, 0x259],
  [0x2bb, 0x2bc],
  [0x2c6, 0x2c7],
  [0x2d8, 0x2dd],
  // Greek with tonos
  [0x384, 0x386],
  [0x388, 0x38a],
  [0x38c, 0x38c],
  [0x38e, 0x3a1],
  [0x3a3, 0x3ce],
  // Cyrillic: Russian, Ukrainian, Belarusian, Serbian, Macedonian, Bulgarian; the letters of Central Asia
  [0x400, 0x45f],
  [0x490, 0x4c2],
  [0x4cf, 0x4d9],
  [0x4dc, 0x4e9],
  [0x4ee, 0x4f9],
  // Welsh, capital sharp s, Vietnamese
  [0x1e80, 0x1e85],
  [0x1e9e, 0x1e9e],
  [0x1ea0, 0x1ef9],
  // Spaces, dashes, quotation marks, bullets, ellipsis, per mille, primes
  [0x2002, 0x200a],
  [0x2010, 0x2015],
  [0x2018, 0x201a],
  [0x201c, 0x201e],
  [0x2020, 0x2022],
  [0x2026, 0x2026],
  [0x202f, 0x2030],
  [0x2032, 0x2033],
  [0x2039, 0x203a],
  // Fraction slash, raised and lowered digits
  [0x2044, 0x2044],
  [0x2070, 0x2070],
  [0x2074, 0x2079],
  [0x2080, 0x2089],
  // Euro, hryvnia, rupee, lira, rouble, numero, trade mark
  [0x20ac, 0x20ac],
  [0x20b4, 0x20b4],
  [0x20b9, 0x20ba],
  [0x20bd, 0x20bd],
  [0x2116, 0x2116],
  [0x2122, 0x2122],
  // Fractions, arrows, turns
  [0x2150, 0x2151],
  [0x2153, 0x215e],
  [0x2190, 0x2199],
  [0x21ba, 0x21bb],
  [0x21c4, 0x21c4],
  // Increment, product, sum, minus, slash, operators, ticks
  [0x2206, 0x2206],
  [0x220f, 0x220f],
  [0x2211, 0x2212],
  [0x2215, 0x2215],
  [0x2219, 0x221a],
  [0x221e, 0x221e],
  [0x2248, 0x2248],
  [0x2260, 0x2260],
  [0x2264, 0x2265],
  [0x25ca, 0x25ca],
  [0x2713, 0x2713],
];

/** What the family lacks and bench paper uses: diameter, angles, squares to tick, triangles, circles, scissors. */
const BORROWED: Source['ranges'] = [
  [0x2205, 0x2205],
  [0x221f, 0x2220],
  [0x2300, 0x2300],
  [0x25a0, 0x25a1],
  [0x25b2, 0x25b3],
  [0x25b6, 0x25b7],
  [0x25bc, 0x25bd],
  [0x25c0, 0x25c1],
  [0x25c6, 0x25c7],
  [0x25cb, 0x25cb],
  [0x25cf, 0x25cf],
  [0x2610, 0x2612],
  [0x2702, 0x2702],
  [0x2717, 0x2717],
];

export const SOURCES: readonly Source[] = [
  {
    id: 'regular',
    weight: 'regular',
    name: 'MatwrightSans-Regular',
    file: '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf',
    ranges: FAMILY,
  },
  {
    id: 'bold',
    weight: 'bold',
    name: 'MatwrightSans-Bold',
    file: '@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf',
    ranges: FAMILY,
  },
  {
    id: 'regular-fallback',
    weight: 'regular',
    name: 'MatwrightWide-Regular',
    file: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
    ranges: BORROWED,
  },
  {
    id: 'bold-fallback',
    weight: 'bold',
    name: 'MatwrightWide-Bold',
    file: 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
    ranges: BORROWED,
  },
];
