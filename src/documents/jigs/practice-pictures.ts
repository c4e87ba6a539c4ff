import { type Block, joined, moved, stacked } from '../../text/block.ts';
import type { Entry } from '../../text/entries.ts';
import { paragraph } from '../../text/paragraph.ts';
import { HEAD } from '../../text/styles.ts';
import { CORNER_PICTURES, PICTURE } from './corner-pictures.ts';
import { columns, type JigContext, jigSheets, type sheet } from './jig.ts';

const GAP = 6;

/** What one sees, and what to do: as many to a row as the paper has room for. */
export function pictureSheets(context: JigContext, kind: string, title: string): readonly ReturnType<typeof sheet>[] {
  const { fonts } = context;
  const entries: readonly Entry[] = [
    { kind: 'title', text: 'What you see, what to do' },
    {
      kind: 'text',
      text: 'Seen from the FACE. White is board, grey is seen through the opening, the strip between them is the bevel. The heavy line is what went wrong. Change one thing, then cut again.',
    },
    ...CORNER_PICTURES.map(
      ({ sees, does, drawing }): Entry => ({
        kind: 'figure',
        make: (width, { text }) => {
          const said: Block = stacked(
            [
              paragraph(sees, width - PICTURE.width - GAP, HEAD, fonts),
              paragraph(does, width - PICTURE.width - GAP, text, fonts),
            ],
            1.6,
          );
          const picture: Block = { ...PICTURE, items: moved(drawing.groups[0]!.items, 0, 0) };
          return joined({ width, height: Math.max(picture.height, said.height) }, [
            [picture, { x: 0, y: 0 }],
            [said, { x: PICTURE.width + GAP, y: 0 }],
          ]);
        },
      }),
    ),
  ];
  return jigSheets(context, {
    kind,
    title,
    entries,
    figure: (area) => ({ items: [], boxes: columns(area, Math.max(1, Math.floor(area.width / 95))) }),
    pens: CORNER_PICTURES[0]!.drawing.pens,
  });
}
