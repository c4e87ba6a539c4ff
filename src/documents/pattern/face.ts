import { type GrooveStroke, grooveStrokes } from '../../bench/grooves.ts';
import { type FullScale, usesPen } from '../../drawing/full-scale.ts';
import type { Item } from '../../drawing/model.ts';
import { type Box, box, grown, union } from '../../geometry/box.ts';
import { pathBox } from '../../geometry/extent.ts';
import { placedPath } from '../../geometry/path.ts';
import { type Point, plus, point, times } from '../../geometry/point.ts';
import type { Job } from '../../job/job.ts';
import { decor } from '../../mat/decor.ts';
import type { Mat } from '../../mat/model.ts';
import type { Block } from '../../text/block.ts';
import { LARGE_BOLD, stepsDown } from '../../text/styles.ts';
import { printDecimal } from '../../units/print.ts';
import { bands, innerStrips, scan } from '../full-scale/candidates.ts';
import { type Around, noteLabel, topLabel } from '../full-scale/note-labels.ts';
import { FullScaleSheet } from '../full-scale/sheet.ts';
import { tapeChecks } from '../full-scale/tape-checks.ts';
import { drawBoard } from './board.ts';
import { decorWords } from './decor.ts';
import { pointLabels } from './free-words.ts';
import { GROUPS, noRoom } from './groups.ts';
import { LEGEND, line, outward, PENS, TRIM_INSET } from './lines.ts';
import { jobNote, sideNote, topNote } from './notes.ts';
import type { PatternOptions } from './pattern.ts';
import { restLabels } from './rest-labels.ts';
import { shifted } from './shifted.ts';
import { REACH_INSIDE, type StrokeSetting, strokeWords, tickLetters } from './stroke-words.ts';
import { type DrawnRest, drawRests, type Tick, tagOf } from './strokes.ts';
import { headWords } from './words.ts';

const AROUND = 1;
/** Marks of the two passes lie half a groove apart: the longer ones are the first pass's. */
const TICKS = { 1: 25, 2: 11 };

/** What lines mean on this sheet where it is another thing than on the back. */
const MEANS: Readonly<Record<string, string>> = {
  cut: "groove's edge: where the blade enters the face",
  face: "groove's middle, where its slopes meet",
  blank: 'opening, cut later from the back',
  groove: 'groove, by template or machine',
  ink: 'ink line, drawn on the face',
};

/** What is done on the face of the top mat; undefined where nothing is. */
export function facePattern(mat: Mat, job: Job, { fonts, extent }: PatternOptions): FullScale | undefined {
  const lines = decor(mat, job);
  if (lines.length === 0) return undefined;
  const by = point(AROUND, AROUND);
  const board = box(AROUND, AROUND, mat.outer.width, mat.outer.height);
  const paper = grown(board, -TRIM_INSET);
  const sheet = new FullScaleSheet(paper, GROUPS);
  const { add } = sheet;
  drawBoard(mat, 0, board, TRIM_INSET, add);
  const moved = (path: Parameters<typeof placedPath>[0]) => placedPath(path, (p) => plus(p, by));
  mat.openings.forEach(({ layers }, i) => {
    add('face', { kind: 'path', pen: 'blank', paths: [moved(layers[0]!.face)], id: `opening-${i + 1}` });
  });
  for (const { opening, request, number, runs } of lines) {
    const cut = request.kind === 'groove' && runs.every((run) => run.segments.every(({ kind }) => kind === 'line'));
    if (cut) continue;
    const id = `${request.kind}-${opening + 1}-${number}`;
    add('decor', { kind: 'path', pen: request.kind, paths: runs.map(moved), id });
  }
  const own = grooveStrokes(mat, job).map((s) => shifted(s, by));
  const drawn = own.map((s) => drawPass(s, job, paper, add));
  const [ticks, rests] = [drawn.flatMap((each) => each.ticks), drawn.flatMap((each) => each.rests)];
  const checks = extent === 'corners' ? undefined : tapeChecks(board, paper, job.units, sheet.clearOf(PENS), 'check');
  add('check', ...(checks?.items ?? []));
  const boxes = new Map<number, Box>();
  for (const { opening, whole } of lines) {
    const area = pathBox(moved(whole));
    const known = boxes.get(opening + 1);
    boxes.set(opening + 1, known === undefined ? area : union([known, area]));
  }
  const crowded = own.length > 48;
  const head = {
    title: `${job.title}: face of the top mat`,
    width: mat.outer.width + 2 * AROUND,
    height: mat.outer.height + 2 * AROUND,
    view: 'face' as const,
    pens: PENS,
  };
  const strokes: StrokeSetting = {
    job,
    board,
    paper,
    boxes,
    crowded,
    alone: mat.openings.length === 1,
    view: 'face',
    fonts,
  };
  const cutBox = union([...boxes.values()]);
  const surroundings: Around = { paper, cutBox, depth: 2 * REACH_INSIDE };
  const { upper } = bands(paper, cutBox);
  const [above, below] = innerStrips(grown(cutBox, -3), 2 * REACH_INSIDE);
  const places = (block: () => Block) => [upper, above, below].map((strip) => () => scan(block(), 0, strip));
  const plain = [`top mat: ${mat.layers[0]!.board.name}, before its openings are cut`, headWords(job)];
  const notes = [sideNote('FACE', fonts), jobNote(job.title, [], plain, [90], fonts)];
  const { drawing, words, warnings } = sheet.withWords(
    head,
    noRoom("the top mat's face pattern"),
    function* (view, taken) {
      yield* tickLetters(ticks, view, crowded, fonts, stepsDown(LARGE_BOLD));
      yield* strokeWords(own, strokes, view, taken);
      yield* restLabels(rests, view, fonts);
      const decorated = decorWords(mat, job, AROUND, 'face').flatMap(({ what, lines: texts, at }) =>
        pointLabels(what, 'decor', texts, at, paper, view, fonts),
      );
      const noted = [
        topLabel(topNote(fonts), surroundings, view),
        ...notes.map((note, i) => noteLabel(note, places, surroundings, view, i > 0 && !view.whole)),
      ];
      yield* view.whole ? [...decorated, ...noted] : [...noted, ...decorated];
    },
  );
  return {
    drawing,
    words,
    board,
    avoid: sheet.avoid,
    facts: checks?.facts ?? [],
    legend: LEGEND.flatMap((each) =>
      usesPen(each.pen, drawing) ? [{ pen: each.pen, text: MEANS[each.pen] ?? each.text }] : [],
    ),
    instructions: steps(own, job),
    warnings: extent === 'corners' ? [] : warnings,
  };
}

/** A pass: its edge, the middle that both passes share, and its marks outside of the corners. */
function drawPass(
  s: GrooveStroke,
  job: Job,
  paper: Box,
  add: (group: string, ...items: readonly Item[]) => void,
): { readonly ticks: readonly Tick[]; readonly rests: readonly DrawnRest[] } {
  const tag = tagOf(s);
  const out = outward(s, job.bench.head.opening);
  add('cut', line('cut', s.line.from, s.line.to, `cut-${tag}`));
  if (s.pass === 1) add('face', line('face', s.face.from, s.face.to, `middle-${tag}`));
  const rests = drawRests(s, tag, paper, add);
  const ends = [
    ['S', s.start],
    ['E', s.stop],
  ] as const;
  const ticks = ends.map(([letter, mark]): Tick => {
    const item = line(
      'mark',
      within(mark, out, paper, TICKS[s.pass]),
      mark,
      `${letter === 'S' ? 'start' : 'stop'}-${tag}`,
    );
    add('marks', item);
    return { item, letter, stroke: s, out };
  });
  return { ticks, rests };
}

/** As long as a tick is, or as far as the paper goes. */
function within(mark: Point, way: Point, paper: Box, tick: number): Point {
  const room = Math.min(
    way.x > 0 ? paper.x + paper.width - mark.x : way.x < 0 ? mark.x - paper.x : tick,
    way.y > 0 ? paper.y + paper.height - mark.y : way.y < 0 ? mark.y - paper.y : tick,
  );
  return plus(mark, times(way, Math.max(2, Math.min(tick, room - 2))));
}

function steps(own: readonly GrooveStroke[], job: Job): readonly string[] {
  const mm = (length: number): string => `${printDecimal(length, 'mm', 2).text} mm`;
  const depths = [...new Set(own.map(({ depth }) => mm(depth)))];
  const first = [
    "Done on the face of the top mat, before its openings are cut. Join the sheets, if several; trim the paper along the short grey dashes, inside the board's edge, but not at the tabs: their ends lie flush with it, pointers on the edge.",
    'Lay it on the FACE, this side up, TOP at the top. Low-tack tape only where an opening will be cut out: it can pull the face off.',
    'Clean hands, or gloves: what is seen here will be seen for good.',
  ];
  const inked = job.openings.some(({ decor: all }) => (all ?? []).some(({ kind }) => kind === 'ink'));
  const cut =
    own.length === 0
      ? []
      : [
          'Prick lightly, not through, where each S and E tick meets its solid line: the groove takes the prick away. Take the paper off.',
          `Set the blade ${depths.join(' and ')} deep, so that the two slopes meet and the board is not cut through. Try it on an offcut of the same board: both passes, one corner.`,
          `Pass by pass in the order of the numbers, each from S to E, face up. What says "far edge on guide" slopes the other way. ${headWords(job)}; no overrun here, it would show.`,
          'Lift the strip out with the tip of the blade where it still hangs.',
        ];
  const ink = inked ? ['Ink lines: ruled by their distances from the edges, with a pen tried on an offcut.'] : [];
  const last =
    "Sharp blade on a firm surface; hands never in its path; spent blades into a puncture-proof box. The cutter's own manual comes first.";
  return [...first, ...cut, ...ink, last];
}
