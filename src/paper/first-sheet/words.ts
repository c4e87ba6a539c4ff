import type { Fact, FullScale, Readings } from '../../drawing/full-scale.ts';
import type { Size } from '../../geometry/point.ts';
import { printerWords } from '../../settle/printer.ts';
import type { Entry } from '../../text/entries.ts';
import { showLength, showSize } from '../../units/print.ts';
import type { Sheet } from '../area.ts';
import type { LayoutOptions } from '../options.ts';

/** What the first sheet needs to know of the layout. */
export interface CheckFacts {
  readonly work: FullScale;
  readonly options: LayoutOptions;
  readonly paperName: string;
  readonly sheet: Sheet;
  /** Degrees clockwise. */
  readonly rotation: number;
  readonly sheets: number;
  readonly skipped: number;
  /** What neighbours really share, in x and y; undefined where no sheets are joined. */
  readonly laps?: { readonly x: number; readonly y: number };
  /** How the sheets go together, in steps. */
  readonly joining: readonly string[];
  /** The words stand on the pattern itself, where no line may be solid but the lines to cut. */
  readonly onPattern?: boolean;
}

/** What the lengths of the lines mean (the two wrong papers: A4 fitted to Letter 0.9407, Letter fitted to A4 0.9727). */
export function meaning(
  mm: number,
  inches: number,
  { paperName, options, sheet, onPattern = false }: CheckFacts,
): readonly Entry[] {
  const share = (whole: number) => (whole * mm).toFixed(mm < 100 ? 1 : 0);
  const stamp = printerWords(options.printer);
  // The shop's x and y are those of the paper upright, as it goes through the printer.
  const axes = sheet.sideways
    ? 'this sheet lies on its side, so x is the length down and y the one across'
    : 'x across, y down';
  const texts = [
    `They must be ${mm} mm and ${inches} in, across and down. A line that is 0.2 mm off is 1 mm off over ${5 * mm} mm of mat.`,
    ...(onPattern
      ? []
      : [
          `${share(0.9407)} or ${share(0.9727)} mm instead of ${mm}: the wrong paper is set (A4 squeezed onto Letter, or Letter onto A4). Set ${paperName}, no scaling, and print this sheet again.`,
        ]),
    stamp === undefined
      ? `This file is ${options.stamp}. ${onPattern ? 'Another' : 'Any other'} length is the printer's own error: give the shop's file the two lengths in mm (${axes}), and print again.`
      : `This file is ${stamp}; the lines must come out right with it. If they do not, measure the printer anew.`,
  ];
  return [{ kind: 'heading', text: 'Measure the four lines' }, ...texts.map((text): Entry => ({ kind: 'text', text }))];
}

/** `first` pages are this one and those that go on with it. */
export function settings(
  { options, paperName, sheet, rotation, sheets, skipped, laps, onPattern = false }: CheckFacts,
  first: number,
): readonly Entry[] {
  const { units, join } = options;
  const lap =
    laps === undefined
      ? undefined
      : join === 'butt'
        ? 'none, butted'
        : laps.x === laps.y
          ? showLength(laps.x, units)
          : `${showLength(round(laps.x), units)} across, ${showLength(round(laps.y), units)} down`;
  const rows: (readonly [string, string | undefined])[] = [
    [
      'Paper',
      `${paperName}, ${showSize(sheet.paper, isMetric(sheet.paper) ? 'mm' : units)}${sheet.sideways ? ', on its side' : ''}`,
    ],
    ['Margins', marginWords(sheet.margin, (mm) => showLength(mm, units))],
    ['Lap', lap],
    ['Pattern', rotation === 0 ? 'upright on the sheets' : `turned ${rotation}° clockwise on the sheets`],
    ['Pages', onPattern ? 'one' : pagesWords(first, sheets, skipped)],
    ['Printer', printerWords(options.printer)],
  ];
  return [
    { kind: 'heading', text: 'Settings' },
    ...rows.flatMap(([name, value]): Entry[] => (value === undefined ? [] : [{ kind: 'row', name, value }])),
  ];
}

/** As many as come out of the printer. */
function pagesWords(first: number, sheets: number, skipped: number): string {
  const these = first === 1 ? 'this one' : `these ${first}`;
  const blank = skipped === 0 ? '' : `; ${skipped} more would be blank and are left out`;
  return `${first + sheets}: ${these} and ${sheets} of the pattern${blank}`;
}

/** ISO and JIS sheets are whole millimetres by definition. */
const isMetric = ({ width, height }: Size): boolean => Number.isInteger(width) && Number.isInteger(height);

/** Laps are chosen, not asked for: to a tenth of a millimetre is enough to say. */
const round = (mm: number): number => Math.round(mm * 10) / 10;

function marginWords({ top, right, bottom, left }: LayoutOptions['margin'], show: (mm: number) => string): string {
  if (top === right && right === bottom && bottom === left) return `${show(top)} all round`;
  return `top ${show(top)}, right ${show(right)}, bottom ${show(bottom)}, left ${show(left)}`;
}

/** What the map of a grid shows. */
export function gridCaption(skipped: number): string {
  const grey = skipped === 0 ? '' : ' Grey: nothing there, not printed.';
  return `The sheets as they lie: letters are rows from the top, numbers columns from the left.${grey}`;
}

/** How sheets are joined into one. */
export function joiningSteps(sheets: number, join: LayoutOptions['join']): readonly string[] {
  if (sheets === 1) return ['Print the next page on the same paper with the same settings.'];
  return [
    `Print the ${sheets} sheets that follow on the same paper with the same settings, and lay them out as on the map.`,
    join === 'lap'
      ? 'Where a sheet has a neighbour to its left or above it, cut that edge off along the dots. Lay it over the neighbour until dots and crosses of the same name meet; tape it.'
      : 'Cut off every edge that has a neighbour along the dots. Lay the edges together so that the halves of each cross meet; tape them.',
  ];
}

/** How corner sheets are used: `several` where some corner takes more than one. */
export function cornerSteps(sheets: number, several: boolean, join: LayoutOptions['join']): readonly string[] {
  const [print, tape] = joiningSteps(sheets, join);
  return [
    sheets === 1 ? print! : `Print the ${sheets} sheets that follow on the same paper with the same settings.`,
    ...(several ? [`Sheets whose names begin alike belong to one corner and are joined first. ${tape}`] : []),
    "Lay each sheet on by the board's own two edges that meet in its corner. The corners are not taped to one another: the pattern is as true as the board.",
  ];
}

/** What the board asks of any paper on it, for a drawing that brings no steps of its own. */
const LAYING: readonly string[] = [
  "Trim the paper a little inside the board's edge, but leave the notches: their ends lie flush with it.",
  'Fix it with low-tack tape, none of it over an edge of the board.',
  'Paper must not lie double where the head or its guide will run.',
];

/** How the pattern is put together, checked and used; what its lines mean; what to watch. */
export function usage({ work, options, joining, laps, onPattern = false }: CheckFacts): readonly Entry[] {
  const { drawing, board, facts, legend, readings, warnings } = work;
  const steps = (texts: readonly string[]) => texts.map((text, i): Entry => ({ kind: 'step', number: i + 1, text }));
  const use = work.instructions ?? (board === undefined ? [] : LAYING);
  return [
    ...(joining.length === 0
      ? []
      : [
          {
            kind: 'heading',
            text:
              joining.length === 1
                ? 'Then'
                : options.extent === 'corners'
                  ? 'Lay the sheets on'
                  : 'Put the sheets together',
          } as const,
          ...steps(joining),
        ]),
    ...(facts.length === 0 ? [] : [{ kind: 'heading', text: 'Check with a tape measure' } as const, checkTable(facts)]),
    ...(use.length === 0 ? [] : [{ kind: 'heading', text: 'Use the pattern' } as const, ...steps(use)]),
    ...(readings === undefined ? [] : readingEntries(readings)),
    ...(warnings.length === 0 ? [] : [{ kind: 'heading', text: 'Mind' } as const]),
    ...warnings.map(
      ({ message, hint }): Entry => ({ kind: 'text', text: hint === '' ? `${message}.` : `${message}; ${hint}.` }),
    ),
    ...(legend.length === 0 ? [] : [{ kind: 'heading', text: 'Lines' } as const]),
    ...legend.map(({ pen, text }): Entry => {
      const solid = drawing.pens[pen]?.dash.length === 0;
      return solid && onPattern
        ? { kind: 'row', name: 'solid', value: text }
        : { kind: 'legend', pen: drawingPen(pen), text };
    }),
    ...(laps === undefined
      ? []
      : ([{ kind: 'legend', pen: 'join', text: 'sheets are joined along these dots' }] as const)),
  ];
}

/** Rows of a table are as high as their words. */
const CLOSE = { kind: 'table', rowHeight: 0 } as const;

/** Numbered as on the map. */
const checkTable = (facts: readonly Fact[]): Entry => ({
  ...CLOSE,
  head: ['', 'measure', 'must be'],
  widths: [0.9, 5, 5],
  rows: facts.map(({ label, shown }, i) => [`${i + 1}`, label, shown]),
});

const readingEntries = ({ rows, caption }: Readings): readonly Entry[] => [
  { kind: 'heading', text: 'Guide settings' },
  ...(rows.length === 0 ? [] : [{ ...CLOSE, head: ['set to', 'for strokes'], widths: [2, 3], rows }]),
  { kind: 'text', text: caption },
];

/** A pen of the drawing, among the pens of the first sheet. */
export const drawingPen = (name: string): string => `drawing-${name}`;
