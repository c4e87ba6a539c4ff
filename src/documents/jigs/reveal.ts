import type { Item } from '../../drawing/model.ts';
import { point } from '../../geometry/point.ts';
import { capHeight } from '../../text/line.ts';
import { HEAD } from '../../text/styles.ts';
import { showLength } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { type Gauge, gaugeJig, MAKING } from './gauge.ts';
import { type JigContext, type JigEntry, outline } from './jig.ts';
import { steps, words } from './words.ts';

const BLADE = 95;
const HANDLE = { width: 32, height: 15 };
const APART = 4;

/** The usual reveals, and those of the job. */
function reveals({ units, solved }: JigContext): readonly number[] {
  const usual = units === 'in' ? [2, 3, 4, 5, 6, 8].map((n) => (n * mmPer('in')) / 16) : [3, 4, 5, 6, 8, 10];
  const own =
    solved?.mat.openings.flatMap((opening) =>
      opening.layers.slice(1).flatMap((layer) => Object.values(layer.reveal)),
    ) ?? [];
  const all = [...usual, ...own].filter((mm) => mm >= 1 && mm <= 40).sort((a, b) => a - b);
  return all.filter((mm, i) => i === 0 || mm - all[i - 1]! > 0.01);
}

/** One spacer for each reveal: a blade as wide as the reveal, on a handle with its name. */
function spacers(context: JigContext, list: readonly number[]): Gauge {
  const cut: Item[] = [];
  const marks: Item[] = [];
  let y = 0;
  for (const reveal of list) {
    const high = Math.max(HANDLE.height, reveal);
    const { width } = HANDLE;
    const corners = [
      point(0, y),
      point(width + BLADE, y),
      point(width + BLADE, y + reveal),
      point(width, y + reveal),
      ...(reveal < high ? [point(width, y + high)] : []),
      point(0, y + high),
    ];
    cut.push(outline('cut', corners, `spacer-${showLength(reveal, context.units)}`));
    marks.push(
      words(
        showLength(reveal, context.units),
        point(width / 2, y + high / 2 + capHeight(HEAD, context.fonts) / 2),
        HEAD,
        'middle',
      ),
    );
    y += high + APART;
  }
  return { width: HANDLE.width + BLADE, height: y - APART, cut, marks };
}

export const REVEAL_SPACERS: JigEntry = {
  kind: 'reveal',
  summary: 'spacers as wide as the usual reveals, and the job’s own',
  needs: 'nothing',
  make: (context) =>
    gaugeJig(context, {
      kind: 'reveal',
      title: 'Reveal spacers',
      gauge: spacers(context, reveals(context)),
      entries: [
        { kind: 'title', text: 'Reveal spacers' },
        {
          kind: 'text',
          text: 'Each blade is as wide as the reveal on its handle: face edge of one mat to face edge of the next.',
        },
        ...steps([
          MAKING,
          'To check a double mat lay the blade on the under mat, against the face edge of the mat above: the bevel of the under mat begins at its other side, all round alike.',
          'To set an under mat by hand lay the blade in all four corners before the tape takes hold.',
        ]),
      ],
    }),
};
