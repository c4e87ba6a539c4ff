import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import { flowSections, inside, type Section } from '../../text/bench-flow.ts';
import { BENCH_PENS, INTRO_IN_BLACK, moved, NAME, stacked, textPart } from '../../text/bench-type.ts';

/** Of every sheet that is clipped to a board: wide enough at the top for the clip. */
export const TICKET_MARGIN = { top: 14.5, side: 12.5, bottom: 8.5 } as const;

export interface Listed {
  /** Of the file. */
  readonly title: string;
  /** The headline, and a line below it. */
  readonly name: string;
  readonly lead: string;
  /** What the drawing's only group is called. */
  readonly group: string;
  readonly sections: readonly Section[];
  readonly paper: Size;
  readonly fonts: Fonts;
}

/** A headline and sections in two columns, on as many sheets as they take. */
export function listedSheets({ title, name, lead, group, sections, paper, fonts }: Listed): readonly Drawing[] {
  const page = inside(paper, TICKET_MARGIN);
  const head = stacked([textPart(name, page.width, NAME, fonts), textPart(lead, page.width, INTRO_IN_BLACK, fonts)], 2);
  const area = (index: number) => {
    const top = index === 0 ? head.height + 6 : 0;
    return box(page.x, page.y + top, page.width, page.height - top);
  };
  return flowSections(sections, area, fonts).pages.map(({ items }, index) => {
    const all = [...(index === 0 ? moved(head.items, page.x, page.y) : []), ...items];
    return benchSheet(title, group, paper, all);
  });
}

/** A finished sheet of one group. */
export function benchSheet(
  title: string,
  group: string,
  paper: Size,
  items: Drawing['groups'][number]['items'],
): Drawing {
  return {
    title,
    width: paper.width,
    height: paper.height,
    view: 'sheet',
    pens: BENCH_PENS,
    groups: [{ name: group, label: title, shown: true, items }],
  };
}
