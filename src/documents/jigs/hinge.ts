import { hingeFromCorner, ON_ART, STRIP, TAB } from '../../bench/hinges.ts';
import type { Item } from '../../drawing/model.ts';
import { box } from '../../geometry/box.ts';
import { point } from '../../geometry/point.ts';
import { HEAD, LARGE, TEXT } from '../../text/styles.ts';
import { showLength } from '../../units/print.ts';
import { type Gauge, gaugeJig, MAKING } from './gauge.ts';
import { contentArea, type JigContext, type JigEntry, rectangle, tooSmall } from './jig.ts';
import { steps, words } from './words.ts';

const EDGE = 18;

/** Of the work that the job has, or of one that is usual. */
function distance({ solved }: JigContext): number {
  const width = solved?.mat.openings[0]?.artwork?.size.width;
  return width === undefined ? 50 : hingeFromCorner(width);
}

/** A card whose lower edge and one side lie flush with the back of the artwork's upper corner. */
function template(inFrom: number): Gauge {
  const width = Math.max(inFrom + STRIP.width / 2, 84) + EDGE;
  const height = 18 + TAB.height + 26;
  // The artwork's upper edge runs across the card; what lies below it lies on the artwork.
  const art = 18 + TAB.height - ON_ART;
  const marks: Item[] = [
    { kind: 'line', pen: 'bold', from: point(0, art), to: point(width, art), id: 'artwork-edge' },
    words('artwork’s upper edge', point(width - 2, art + 4.6), LARGE, 'end'),
    words('T-hinges, back of the artwork', point(3, height - 10), HEAD),
    words(`tab’s middle ${inFrom} mm from the side; turn over for the other corner`, point(3, height - 4), TEXT),
  ];
  const cut = [
    rectangle('cut', box(0, 0, width, height), 'outline'),
    rectangle('cut', box(inFrom - TAB.width / 2, 18, TAB.width, TAB.height), 'tab'),
    rectangle('cut', box(inFrom - STRIP.width / 2, 2, STRIP.width, STRIP.height), 'strip'),
  ];
  return { width, height, cut, marks };
}

export const HINGE_TEMPLATE: JigEntry = {
  kind: 'hinge',
  summary: 'a template that places T-hinges on the back of an artwork',
  needs: 'nothing',
  make(context) {
    const inFrom = distance(context);
    const gauge = template(inFrom);
    if (gauge.width > contentArea(context).width) return tooSmall(context, 'hinge', gauge);
    return gaugeJig(context, {
      kind: 'hinge',
      title: 'Hinge template',
      gauge,
      entries: [
        { kind: 'title', text: 'Hinge template' },
        { kind: 'text', text: 'Valuable or old works: ask a conservator before hinging.', bold: true },
        ...steps([
          MAKING,
          'Lay the artwork face down on clean blotting paper. Lay the card on its upper left corner: the thick line on its upper edge, the card’s side flush with its side.',
          `Mark the tab’s place very lightly, or hold the card and lay the tab through the slot: ${ON_ART} mm of it on the artwork.`,
          'Turn the card over for the other corner. Artworks wider than about 60 cm take more hinges, evenly between.',
          'Lay the artwork on its backing, face up, and lay the crossing strip over the tab above the artwork’s edge: the upper slot shows where.',
          `Tear the paper rather than cut it, and use a paste that water takes off again. Let it dry under a weight.`,
        ]),
        {
          kind: 'text',
          text: `T-hinges lie under the mat; a floated artwork takes V-hinges behind it. Two at least, along the upper edge (Library of Congress, NEDCC leaflets on matting). The measures here are common practice: tab ${showLength(TAB.width, 'mm')} wide.`,
        },
      ],
    });
  },
};
