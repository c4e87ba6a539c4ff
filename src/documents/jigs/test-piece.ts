import { strokes as makeStrokes } from '../../bench/strokes.ts';
import type { Drawing, Item } from '../../drawing/model.ts';
import { point, type Size } from '../../geometry/point.ts';
import { readJob } from '../../job/read.ts';
import { solve } from '../../mat/solve.ts';
import { fail, type Result, succeed } from '../../problems/problem.ts';
import type { Head } from '../../shop/head.ts';
import { moved } from '../../text/block.ts';
import { capHeight } from '../../text/line.ts';
import { HEAD } from '../../text/styles.ts';
import { showLength } from '../../units/print.ts';
import { mmPer } from '../../units/units.ts';
import { pattern } from '../pattern/pattern.ts';
import { contentArea, type JigContext, sheet } from './jig.ts';
import { words } from './words.ts';

/** Paper beyond the board's edge on a pattern. */
const AROUND = 2;
const CAPTION_ROOM = 10;

/** No larger than a stroke needs to show how the head travels: board costs money. */
const largest = (units: JigContext['units']): Size =>
  units === 'in' ? { width: 8 * mmPer('in'), height: 10 * mmPer('in') } : { width: 200, height: 250 };

/** Blanks of a test, and their borders: round lengths in the shop's unit that a sheet of paper holds. */
export function pieceSize(context: JigContext): { readonly blank: Size; readonly border: number } | undefined {
  const area = contentArea(context);
  const step = context.units === 'in' ? mmPer('in') / 2 : 10;
  const down = (mm: number) => Math.floor(mm / step) * step;
  const most = largest(context.units);
  const blank = {
    width: down(Math.min(most.width, area.width - AROUND)),
    height: down(Math.min(most.height, area.height - AROUND - CAPTION_ROOM)),
  };
  const border = context.units === 'in' ? 2 * mmPer('in') : 50;
  // Room for a stroke that shows how the head travels.
  return Math.min(blank.width, blank.height) < 2 * border + 40 ? undefined : { blank, border };
}

/**
 * The pattern of a test piece on a sheet: a mat with one opening, as any other, for a head whose marks are those given.
 * So what is tested is what will be used.
 */
export function testPiece(
  context: JigContext,
  kind: string,
  head: Head,
  thickness: number,
  caption: string,
): Result<Drawing> {
  const size = pieceSize(context)!;
  const mm = (length: number) => `${length} mm`;
  const title = `Test opening, ${showLength(thickness, 'mm')} board`;
  const text = JSON.stringify({
    title,
    units: context.units,
    mat: {
      outer: `${mm(size.blank.width)} x ${mm(size.blank.height)}`,
      border: mm(size.border),
      layers: [
        { board: { thickness: mm(thickness), name: `${showLength(thickness, 'mm')} board` }, bevel: head.bevel },
      ],
    },
    openings: [{}],
  });
  const read = readJob({ text, file: 'test.json' });
  if (!read.ok) return fail(read.problems);
  const { guide, fonts } = context;
  const bench = { ...read.value.job.bench, head, guide, graduation: guide.graduation, snap: false };
  const job = { ...read.value.job, bench };
  const solved = solve(job);
  if (!solved.ok) return fail(solved.problems);
  const { strokes } = makeStrokes(solved.value, job);
  const { drawing, warnings } = pattern(solved.value, strokes, job, 0, { fonts });
  const area = contentArea(context);
  // A tape checks what was joined; this is one sheet.
  const groups = drawing.groups.filter(({ name }) => name !== 'check');
  const items: Item[] = groups.flatMap((group) => moved(group.items, area.x, area.y));
  const at = point(area.x, area.y + drawing.height + 3 + capHeight(HEAD, fonts));
  const made = sheet(context, kind, title, context.paper, [...items, words(caption, at, HEAD)], drawing.pens);
  return succeed(made, warnings);
}
