import { point } from '../../geometry/point.ts';
import { error, fail } from '../../problems/problem.ts';
import { labelBlock, moved } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { SIGN, smaller, stepsDown } from '../../text/styles.ts';
import { showLength, showNear, showSize } from '../../units/print.ts';
import { type Gauge, gaugeJig, MAKING } from './gauge.ts';
import { contentArea, type JigContext, type JigEntry, outline } from './jig.ts';
import { steps } from './words.ts';

/** How far each arm of the corner reaches along the artwork. */
const ARM = 45;

/** An angle that lies flush with the backing's corner; the artwork's corner goes into its inner corner. */
function artCorner(context: JigContext, left: number, top: number): Gauge {
  const { width, height } = contentArea(context);
  const [w, h] = [Math.min(left + ARM, width), Math.min(top + ARM, height)];
  const corners = [point(0, 0), point(w, 0), point(w, top), point(left, top), point(left, h), point(0, h)];
  const words = stepsDown(SIGN).map((style) =>
    labelBlock(
      [
        { text: 'TOP LEFT', style },
        { text: 'flush with the backing', style: { ...smaller(style), weight: 'regular' } },
      ],
      context.fonts,
    ),
  );
  const own = words.find((block) => block.height + 3 <= top && block.width + 3 <= w) ?? words.at(-1)!;
  const marks = moved(own.items, 2.5, 2);
  return { width: w, height: h, cut: [outline('cut', corners, 'outline')], marks };
}

export const ART_CORNER: JigEntry = {
  kind: 'art-corner',
  summary: 'an angle that places the job’s artwork on its backing',
  needs: 'job',
  make(context) {
    const { mat, job } = context.solved!;
    const artwork = mat.openings[0]?.artwork;
    if (artwork === undefined) {
      return fail([
        error('jig-artwork-missing', ['openings', 0], 'the job names no artwork to place', 'give artwork: its size'),
      ]);
    }
    const { x, y } = artwork.box;
    const area = contentArea(context);
    if (x < 4 || y < 4 || x + 20 > area.width || y + 20 > area.height) {
      const message = `the artwork’s corner lies ${showLength(x, job.units)} and ${showLength(y, job.units)} from the backing’s corner, which makes no angle to cut on this paper`;
      return fail([error('jig-paper-small', ['paper'], message, 'take a larger paper')]);
    }
    const title = `Artwork corner, ${job.title}`;
    const show = (mm: number) => showNear(mm, job.units);
    const { overlap } = artwork;
    const covered: Entry = {
      kind: 'text',
      text: artwork.floated
        ? 'The artwork floats: nothing of it is covered.'
        : `So placed the mat covers ${show(overlap.left)} at the left and ${show(overlap.top)} at the top.`,
    };
    return gaugeJig(context, {
      kind: 'art-corner',
      title,
      gauge: artCorner(context, x, y),
      entries: [
        { kind: 'title', text: title },
        {
          kind: 'text',
          text: `Artwork ${showSize(artwork.size, job.units)} on a backing of ${showSize(mat.backing, job.units)}: its corner lies ${show(x)} from the left and ${show(y)} from the top edge.`,
        },
        ...steps([
          MAKING,
          'Lay the angle on the backing, its outer edges flush with the backing’s top left corner, seen from the face.',
          'Push the artwork’s top left corner into the inner corner. Fix its hinges; lift the angle away.',
          'Close the window mat over it and look at all four sides before anything dries.',
        ]),
        covered,
      ],
    });
  },
};
