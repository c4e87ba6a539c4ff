import type { BenchJob } from '../../bench/bench-job.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Block, joined, padded, stacked } from '../../text/block.ts';
import { rule } from '../../text/figures.ts';
import { fittedLine, headline, level, line, paragraph, type TextBlock } from '../../text/paragraph.ts';
import { upArrow, writeLine } from '../../text/signs.ts';
import { BOLD, CLEAR, FINE, NAME, TEXT } from '../../text/styles.ts';
import type { TicketOptions } from './model.ts';

/** The mark that goes on the back of every blank: the job's number, and TOP with its arrow. */
const MARK_WIDTH = 60;

/** Title, customer and count at the left; at the right the mark for the back of every blank. */
export function ticketHead({ job, mat, number }: BenchJob, width: number, { of, fonts }: TicketOptions): Block {
  const room = width - MARK_WIDTH - 8;
  const boards = mat.layers.length === 1 ? 'single mat' : `${mat.layers.length} layers, cut ${job.bench.stack}`;
  const said = [job.customer, boards, job.count === 1 ? 'make one' : `make ${job.count}`].filter((text) => text);
  const named = stacked([headline(job.title, room, NAME, fonts), paragraph(said.join(', '), room, CLEAR, fonts)], 2);
  const counted =
    of === undefined || of.count === 1 ? [] : [line(`ticket ${of.index + 1} of ${of.count}`, TEXT, fonts)];
  const mark = stacked(
    [
      atRight(line('On the BACK of every blank, at its top edge', FINE, fonts)),
      backMark(number, fonts),
      ...counted.map(atRight),
    ],
    2.4,
  );
  return joined({ width, height: Math.max(named.height, mark.height) }, [
    [named, { x: 0, y: 0 }],
    [mark, { x: width - MARK_WIDTH, y: 0 }],
  ]);
}

const atRight = (block: TextBlock): Block =>
  joined({ width: MARK_WIDTH, height: block.height }, [[block, { x: MARK_WIDTH - block.width, y: 0 }]]);

/** The job's number, or a line for it, and which edge is the top. */
function backMark(number: string | undefined, fonts: Fonts): TextBlock {
  const top = line('TOP', NAME, fonts);
  const arrow = upArrow(NAME, fonts);
  const room = MARK_WIDTH - top.width - arrow.width - 6;
  const own = number === undefined ? writeLine('Job', room, TEXT, fonts) : fittedLine(number, room, NAME, fonts);
  return level([
    [room - own.width, own],
    [room + 4, arrow],
    [MARK_WIDTH - top.width, top],
  ]);
}

/** Cautions, and lines for the blade and initials. */
export function ticketFoot(words: string, width: number, fonts: Fonts): Block {
  const shares = [0.3, 0.24, 0.24, 0.22].map((share) => share * width);
  const lefts = shares.map((_, i) => shares.slice(0, i).reduce((sum, share) => sum + share, 0));
  const lines = ['New blade at stroke', 'Cut by', 'Checked by', 'Date'].map(
    (word, i) => [lefts[i]!, writeLine(word, shares[i]! - (i === 3 ? 0 : 4), BOLD, fonts)] as const,
  );
  const all = padded(stacked([paragraph(words, width, FINE, fonts), level(lines)], 3), 1.8);
  return { ...all, items: [rule('rule', 0, width, 0), ...all.items] };
}
