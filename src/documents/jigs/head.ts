import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { SIDES } from '../../geometry/sides.ts';
import { error, fail, type Result, succeed } from '../../problems/problem.ts';
import { BOARD_THICKNESS } from '../../shop/board.ts';
import type { Head } from '../../shop/head.ts';
import { MARKS_BEYOND } from '../../shop/readings/head.ts';
import { moved } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { BOLD, TEXT } from '../../text/styles.ts';
import { showLength, showSize } from '../../units/print.ts';
import { strokeSentence } from '../words/stroke-movements.ts';
import {
  columns,
  type Jig,
  type JigContext,
  type JigEntry,
  jigSheets,
  line,
  orderEntries,
  rectangle,
  tooSmall,
} from './jig.ts';
import { pieceSize, testPiece } from './test-piece.ts';
import { READING_RULE, rule, slip } from './vernier.ts';
import { steps, words } from './words.ts';

const OPENINGS = 2;

export const HEAD_JIG: JigEntry = {
  kind: 'head',
  summary: 'test openings and a slip to read them by, which calibrate a head’s start and stop marks',
  needs: 'nothing',
  make: (context) =>
    headJig(context, {
      kind: 'head',
      title: `Head jig, ${context.head.id}`,
      // Nothing is corrected yet: the scribe is at the mark, 3 mm outside each corner.
      head: {
        ...context.head,
        start: [{ offset: 0 }],
        stop: [{ offset: 0 }],
        overrun: MARKS_BEYOND,
        calibrated: false,
      },
      proof: false,
    }),
};

export const HEAD_PROOF_JIG: JigEntry = {
  kind: 'head-proof',
  summary: 'test openings with the corrected marks, which prove a head’s calibration',
  needs: 'nothing',
  make(context) {
    const { head } = context;
    if (!head.calibrated) {
      const hint = 'matwright jig head prints the first test; calibrate head reads it';
      return fail([
        error('jig-head-uncalibrated', [], `the head ${head.id} is not calibrated, so there is nothing to prove`, hint),
      ]);
    }
    return headJig(context, { kind: 'head-proof', title: `Head proof, ${head.id}`, head, proof: true });
  },
};

interface Test {
  readonly kind: string;
  readonly title: string;
  readonly head: Head;
  readonly proof: boolean;
}

function headJig(context: JigContext, test: Test): Result<Jig> {
  const size = pieceSize(context);
  if (size === undefined) return tooSmall(context, test.kind, { width: 150, height: 165 });
  const thicknesses = thicknessesOf(context, test.head);
  const first = jigSheets(context, {
    kind: test.kind,
    title: test.title,
    entries: entries(context, test, thicknesses, showSize(size.blank, context.units)),
    figure: (area) => {
      const band = box(area.x, bottom(area) - BAND, area.width, BAND);
      return {
        items: figure(band, context.fonts),
        boxes: columns(box(area.x, area.y, area.width, area.height - BAND - 4), 2),
      };
    },
  });
  const pieces = thicknesses.flatMap((thickness) =>
    Array.from({ length: OPENINGS }, (_, i) => {
      const marks = test.proof ? 'corrected marks' : `marks ${MARKS_BEYOND} mm outside the corners`;
      return testPiece(
        context,
        test.kind,
        test.head,
        thickness,
        `${showLength(thickness, 'mm')} board, opening ${i + 1} of ${OPENINGS}, ${marks}`,
      );
    }),
  );
  const wrong = pieces.flatMap((piece) => (piece.ok ? [] : piece.problems));
  if (wrong.length > 0) return fail(wrong);
  const good = pieces.flatMap((piece) => (piece.ok ? [piece] : []));
  return succeed(
    { title: test.title, sheets: [...first, ...good.map((piece) => piece.value)] },
    good.flatMap((piece) => piece.warnings),
  );
}

/** Those asked for, else those of the head's calibration, the job's or the shop's boards: the thinnest and the thickest. */
function thicknessesOf({ thicknesses, solved, shop }: JigContext, head: Head): readonly number[] {
  if (thicknesses.length > 0) return thicknesses;
  const known = [
    head.start.flatMap(({ thickness }) => thickness ?? []),
    solved?.mat.layers.map(({ board }) => board.thickness) ?? [],
    [...shop.boards.values()].map(({ thickness }) => thickness),
    [BOARD_THICKNESS],
  ].find((list) => list.length > 0)!;
  const sorted = [...new Set(known)].sort((a, b) => a - b);
  return sorted.length <= 2 ? sorted : [sorted[0]!, sorted.at(-1)!];
}

function entries(
  context: JigContext,
  { head, proof, title }: Test,
  thicknesses: readonly number[],
  blank: string,
): readonly Entry[] {
  const round = head.opening === 'left' ? 'counterclockwise' : 'clockwise';
  const prick = 'prick the ends of all lines and both marks of each stroke through with a needle';
  const cells = proof ? ['start', 'stop'] : ['start', 'stop', 'start, prick', 'stop, prick'];
  const many = thicknesses.length * OPENINGS;
  return [
    { kind: 'title', text: title },
    {
      kind: 'text',
      text: proof
        ? `Cut with the corrected marks: every end should run ${showLength(head.overrun, 'mm')} past its corner, within a quarter of a millimetre.`
        : 'How far the blade runs past the marks where a stroke starts and where it stops, for each thickness of board.',
    },
    ...orderEntries(context),
    ...steps([
      `New blade, set as always: through one board, just scratching the slip sheet. Note blade and depth.`,
      `Trim ${many} blanks of ${blank}: two of each board (${thicknesses.map((t) => showLength(t, 'mm')).join(', ')}). Measure each board’s thickness with a caliper.`,
      `Lay a test sheet on the back of its blank, ${prick}. Take the paper off.`,
      `Set the guide as the sheet says and cut all four strokes ${round}, as the arrows go. ${strokeSentence(head)} The readings speak for this direction alone.`,
      'Turn the piece over and read it on the face, at both ends of every side: how far the cut runs past the corner, where it crosses the next one. Short of the corner is negative.',
      `Cut out rule and slip below, exactly along the edge that their lines run to. Lay them against the cut from both sides: the rule’s 0 on the crossing, the slip’s 0 on the end of the cut. ${READING_RULE} Short of the corner the lower whole number counts: −2 and 6 tenths are −1.4.`,
      ...(proof
        ? []
        : [
            'As a check read from the pricked hole too: how far the cut’s end lies beyond it, away from the opening (less is negative).',
          ]),
      `Write a file like the one shown and type: matwright calibrate head readings.yaml`,
    ]),
    {
      kind: 'text',
      text: 'Sharp blade, stable surface, hand out of the blade’s path; spent blades into a puncture-proof box.',
    },
    { kind: 'heading', text: 'Write down (mm; sides as seen from the face)' },
    ...thicknesses.flatMap((thickness) =>
      Array.from(
        { length: OPENINGS },
        (_, i): Entry => ({
          kind: 'table',
          head: [`${showLength(thickness, 'mm')}, ${i + 1}`, ...cells],
          rows: SIDES.map((side) => [side, ...cells.map(() => '')]),
          widths: [1.35, ...cells.map(() => 1.25)],
          rowHeight: 6.6,
        }),
      ),
    ),
    { kind: 'heading', text: 'readings.yaml' },
    { kind: 'file', lines: example(head, proof, thicknesses[0]!) },
    { kind: 'text', text: 'One item of pieces for each opening. Millimetres. The numbers here are examples.' },
  ];
}

function example(head: Head, proof: boolean, thickness: number): readonly string[] {
  const by = (start: string, stop: string, more = '') => `{start: ${start}, stop: ${stop}${more}}`;
  const sides = proof
    ? [by('0.3', '0.2'), by('0.2', '0.3'), by('0.1', '0.3'), by('0.2', '0.2')]
    : [by('4.2', '2.6', ', startPrick: 1.2, stopPrick: -0.4'), by('4.1', '2.5'), by('4.3', '2.6'), by('4.2', '2.7')];
  return [
    `head: ${head.id}`,
    ...(proof ? ['proof: true'] : []),
    'blade: 0.3 mm, fresh',
    'depth: just scratches the slip sheet',
    'pieces:',
    `  - thickness: ${thickness}`,
    ...SIDES.map((side, i) => `    ${side}: ${sides[i]}`),
  ];
}

/** Height of the strip with rule, slip and picture. */
const BAND = 36;

/** The rule and the slip to cut out, and beside them how they lie at a corner. */
function figure(band: Box, fonts: Fonts): readonly Item[] {
  const [scale, vernier] = [rule(-5, 40, 'rule', fonts), slip('slip')];
  const y = band.y + 2;
  return [
    ...moved(scale.items, band.x - scale.left, y),
    ...moved(vernier.items, band.x - vernier.left, bottom(band)),
    ...corner(band.x + scale.right - scale.left + 14, y),
  ];
}

/** Not to scale: a cut that runs past the corner, the rule below it and the slip above. */
function corner(left: number, top: number): readonly Item[] {
  const [y, crossing, end] = [top + 15, left + 30, left + 44];
  return [
    line('bold', point(left, y), point(end, y)),
    line('bold', point(crossing, y - 13), point(crossing, y + 17)),
    rectangle('snip', box(crossing - 6, y, 46, 9)),
    rectangle('snip', box(end - 4, y - 9, 24, 9)),
    line('line', point(crossing, y), point(crossing, y + 6)),
    line('line', point(end, y - 6), point(end, y)),
    words('0', point(crossing + 1, y + 5.6), BOLD),
    words('rule', point(crossing + 22, y + 6), TEXT),
    words('0', point(end + 1, y - 3), BOLD),
    words('slip', point(end + 10, y - 4), TEXT),
    words('the cut that is read', point(left, y - 2), TEXT),
    words('its end', point(end + 1, y - 11), TEXT),
    words('the next cut', point(crossing + 2, y + 15), TEXT),
    words('the face, enlarged', point(left, y + 15), TEXT),
  ];
}
