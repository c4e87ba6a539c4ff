import type { PageRecord } from '../../src/paper/manifest.ts';
import { type ReadLine, type ReadPage, type ReadPoint, visible } from '../readers/pdf-lines.ts';

/** A point of the drawing on its page, by the record of that page alone. */
export function onPage(p: ReadPoint, page: PageRecord): ReadPoint {
  const { x, y, width, height, pageX, pageY, rotation, scale } = page as Required<PageRecord>;
  const [dx, dy] = [p.x - x, p.y - y];
  const turned =
    rotation === 0
      ? [dx, dy]
      : rotation === 90
        ? [height - dy, dx]
        : rotation === 180
          ? [width - dx, height - dy]
          : [dy, width - dx];
  return { x: (pageX + turned[0]!) / scale.x, y: (pageY + turned[1]!) / scale.y };
}

const near = (a: ReadPoint, b: ReadPoint, slack = 0.001): boolean =>
  Math.abs(a.x - b.x) <= slack && Math.abs(a.y - b.y) <= slack;

export function sameEnds(line: { from: ReadPoint; to: ReadPoint }, from: ReadPoint, to: ReadPoint): boolean {
  return (near(line.from, from) && near(line.to, to)) || (near(line.from, to) && near(line.to, from));
}

export const sameDash = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((length, i) => Math.abs(length - b[i]!) < 0.001);

/** The drawing's lines on a page (not the sheet's own furniture), as far as they are seen there. */
export function drawn(page: ReadPage): readonly ReadLine[] {
  return page.lines.filter((line) => line.form && line.stroke !== undefined && visible(line) !== undefined);
}
