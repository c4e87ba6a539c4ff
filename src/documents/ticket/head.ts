import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { polygon } from '../../geometry/path.ts';
import { point } from '../../geometry/point.ts';
import {
  BLANK,
  BOLD,
  depthOf,
  FINE,
  INTRO_IN_BLACK,
  moved,
  NAME,
  type Part,
  TEXT,
  textPart,
  writeLine,
} from '../../text/bench-type.ts';
import { capHeight, fitted, headline, LEADING, rule, set, widthOf } from '../../text/type-scale.ts';
import type { BenchJob, TicketOptions } from './model.ts';

/** The mark that goes on the back of every blank: the job's number, and TOP with its arrow. */
const MARK_WIDTH = 58;

/** Title, customer and count at the left; at the right the mark for the back of every blank. */
export function ticketHead({ job, mat, number }: BenchJob, width: number, { of, fonts }: TicketOptions): Part {
  const room = width - MARK_WIDTH - 8;
  const title = headline(job.title, room, NAME, fonts);
  const cap = capHeight(title.style, fonts);
  const pitch = 1.16 * title.style.size;
  const items: Item[] = title.lines.map((line, i) => set(line, 0, cap + i * pitch, title.style));
  let y = cap + (title.lines.length - 1) * pitch + depthOf(title.style, fonts);
  const boards = mat.layers.length === 1 ? 'single mat' : `${mat.layers.length} layers, cut ${job.bench.stack}`;
  const said = [job.customer, boards, job.count === 1 ? 'make one' : `make ${job.count}`].filter((text) => text);
  const line = textPart(said.join(', '), room, INTRO_IN_BLACK, fonts);
  items.push(...moved(line.items, 0, y + 2));
  y += 2 + line.height;

  const left = width - MARK_WIDTH;
  const fine = capHeight(FINE, fonts);
  items.push(set('On the BACK of every blank, at its top edge', width, fine, FINE, 'end'));
  const base = fine + 3.4 + capHeight(BLANK, fonts);
  const top = widthOf('TOP', BLANK, fonts);
  const arrow = capHeight(BLANK, fonts);
  items.push(set('TOP', width, base, BLANK, 'end'), upArrow(width - top - 4.6, base, arrow));
  const numberRoom = MARK_WIDTH - top - 9.5;
  if (number === undefined) items.push(...writeLine('Job', left, base, numberRoom, TEXT, fonts));
  else items.push(set(number, left + numberRoom, base, fitted(number, BLANK, numberRoom, 0.1, fonts), 'end'));
  let bottom = base + depthOf(BLANK, fonts);
  if (of !== undefined && of.count > 1) {
    items.push(set(`ticket ${of.index + 1} of ${of.count}`, width, bottom + capHeight(TEXT, fonts) + 0.6, TEXT, 'end'));
    bottom += 0.6 + LEADING * TEXT.size;
  }
  return { items, height: Math.max(y, bottom) };
}

function upArrow(x: number, base: number, height: number): Item {
  const corners = [
    point(x, base - height),
    point(x + 2.1, base - 0.45 * height),
    point(x + 0.6, base - 0.45 * height),
    point(x + 0.6, base),
    point(x - 0.6, base),
    point(x - 0.6, base - 0.45 * height),
    point(x - 2.1, base - 0.45 * height),
  ];
  return { kind: 'path', fill: 0, paths: [polygon(corners)] };
}

/** Cautions, and lines for the blade and initials. */
export function ticketFoot(words: string, width: number, fonts: Fonts): Part {
  const text = textPart(words, width, FINE, fonts);
  const y = 1.8 + text.height + 5.6;
  const share = [0.3, 0.24, 0.24, 0.22].map((part) => part * width);
  const lefts = share.map((_, i) => share.slice(0, i).reduce((sum, part) => sum + part, 0));
  const lines = ['New blade at stroke', 'Cut by', 'Checked by', 'Date'].flatMap((word, i) =>
    writeLine(word, lefts[i]!, y, share[i]! - (i === 3 ? 0 : 4), BOLD, fonts),
  );
  return {
    items: [rule('rule', 0, width, 0), ...moved(text.items, 0, 1.8), ...lines],
    height: y + 1,
  };
}
