import { reach } from '../../bench/guide.ts';
import type { Stroke } from '../../bench/model.ts';
import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { type Problem, succeed, warning } from '../../problems/problem.ts';
import type { Entry } from '../../text/entries.ts';
import { capHeight } from '../../text/line.ts';
import { LARGE_BOLD } from '../../text/styles.ts';
import type { Units } from '../../units/units.ts';
import { BACK_WORDS, backSide } from '../words/back-side.ts';
import { fine } from '../words/fine.ts';
import { type Gauge, gaugeJig, MAKING } from './gauge.ts';
import { contentArea, type JigContext, type JigEntry, rectangle } from './jig.ts';
import { steps, words } from './words.ts';

const HEIGHT = 18;
const APART = 4;
/** Two places nearer than this are one for a stop. Common practice, no source. */
const ALIKE = 0.05;

/** Where a stop holds the head, for each stroke: from the board's edge that the stroke runs to, mm. */
export interface StopPlace {
  readonly stroke: Stroke;
  readonly end: 'start' | 'stop';
  readonly fromEdge: number;
  /** Between the fixed stop and the head's body; the least place needs none. */
  readonly spacer: number;
}

/**
 * Spacers touch the head's body, whose distance from its scribe nobody measured: so each stop is fixed for the stroke
 * that comes nearest to its edge, by trial, and that is its own zero. All other strokes take a spacer, never a negative one.
 */
function stopPlaces({ mat, strokes }: NonNullable<JigContext['solved']>): readonly StopPlace[] {
  return (['start', 'stop'] as const).flatMap((end) => {
    const places = strokes.map((stroke) => ({
      stroke,
      end,
      fromEdge: reach(mat.outer, stroke[end], stroke.direction),
    }));
    const zero = Math.min(...places.map((place) => place.fromEdge));
    return places.map((place) => ({ ...place, spacer: place.fromEdge - zero }));
  });
}

interface Spacer {
  readonly length: number;
  readonly uses: readonly StopPlace[];
}

/** One piece for all places that need the same length at the same end. */
function spacersOf(places: readonly StopPlace[]): readonly Spacer[] {
  const found: { length: number; uses: StopPlace[] }[] = [];
  for (const place of places) {
    if (place.spacer <= ALIKE) continue;
    const same = found.find(
      ({ length, uses }) => uses[0]!.end === place.end && Math.abs(length - place.spacer) <= ALIKE,
    );
    if (same === undefined) found.push({ length: place.spacer, uses: [place] });
    else same.uses.push(place);
  }
  return found.sort((a, b) => a.length - b.length);
}

function useWords({ uses }: Spacer): string {
  const list = uses.map(({ stroke }) => stroke.order).sort((a, b) => a - b);
  return `${uses[0]!.end === 'stop' ? 'end' : 'start'} of stroke${list.length === 1 ? '' : 's'} ${list.join(', ')}`;
}

function drawn(list: readonly Spacer[], units: Units, fonts: Fonts): Gauge {
  const cut: Item[] = [];
  const marks: Item[] = [];
  let y = 0;
  for (const spacer of list) {
    const text = `${fine(spacer.length, units)}, ${useWords(spacer)}`;
    cut.push(rectangle('cut', box(0, y, spacer.length, HEIGHT), `spacer-${spacer.length.toFixed(2)}`));
    // A spacer that is too short for its name has it beside, on what is cut away.
    const inside = spacer.length > 70;
    marks.push(
      words(text, point(inside ? 4 : spacer.length + 3, y + HEIGHT / 2 + capHeight(LARGE_BOLD, fonts) / 2), LARGE_BOLD),
    );
    y += HEIGHT + APART;
  }
  const widest = Math.max(80, ...list.map(({ length }) => (length > 70 ? length : length + 75)));
  return { width: widest, height: Math.max(HEIGHT, y - APART), cut, marks };
}

export const STOP_SPACERS: JigEntry = {
  kind: 'stops',
  summary: 'spacers for production stops, so that the same strokes start and stop alike on every mat',
  needs: 'job',
  make(context) {
    const solved = context.solved!;
    const places = stopPlaces(solved);
    const area = contentArea(context);
    const all = spacersOf(places);
    const fitting = all.filter(({ length }) => length <= area.width);
    const most = Math.floor((area.height + APART) / (HEIGHT + APART));
    const shown = fitting.slice(0, most);
    const title = `Stop spacers, ${solved.job.title}`;
    const made = gaugeJig(context, {
      kind: 'stops',
      title,
      gauge: drawn(shown, context.units, context.fonts),
      entries: entries(context, places, title),
    });
    return made.ok ? succeed(made.value, leftOut(all, shown, context.units)) : made;
  },
};

function leftOut(all: readonly Spacer[], shown: readonly Spacer[], units: Units): readonly Problem[] {
  const left = all.filter((spacer) => !shown.includes(spacer));
  if (left.length === 0) return [];
  const names = left.map((spacer) => `${fine(spacer.length, units)} (${useWords(spacer)})`).join('; ');
  const message = `spacers longer than the sheet, or more than it holds, are only listed: ${names}`;
  return [
    warning('jig-spacers-left-out', ['paper'], message, 'cut them from a batten by a rule, or take a larger paper'),
  ];
}

function entries({ units }: JigContext, places: readonly StopPlace[], title: string): readonly Entry[] {
  const strokes = [...new Set(places.map(({ stroke }) => stroke))].sort((a, b) => a.order - b.order);
  const at = (stroke: Stroke, end: StopPlace['end']) =>
    places.find((place) => place.stroke === stroke && place.end === end)!;
  const piece = (mm: number) => (mm <= ALIKE ? 'none' : fine(mm, units));
  return [
    { kind: 'title', text: title },
    {
      kind: 'text',
      text: 'For a cutter with a stop at each end of the head’s way, and the board pushed against a square with the edge that the stroke runs to.',
    },
    ...steps([
      MAKING,
      'Fix both stops by trial for the strokes that need no spacer: the scribe on S where the head’s body touches the upper stop, on E where it touches the lower one.',
      'For every other stroke lay its spacer between the stop and the head’s body, above for the start, below for the end. Stack card until it stands firm.',
      'Cut a first mat of scrap and look at its corners.',
    ]),
    {
      kind: 'table',
      head: ['stroke', 'start, from edge', 'spacer', 'end, from edge', 'spacer'],
      rows: strokes.map((stroke) => [
        `${stroke.order} ${backSide(stroke)}`,
        fine(at(stroke, 'start').fromEdge, units),
        piece(at(stroke, 'start').spacer),
        fine(at(stroke, 'stop').fromEdge, units),
        piece(at(stroke, 'stop').spacer),
      ]),
      rowHeight: 7.5,
    },
    {
      kind: 'text',
      text: `Strokes are numbered as on the pattern, sides named as they lie before you, ${BACK_WORDS}.`,
    },
  ];
}
