import type { BenchJob } from '../../bench/bench-job.ts';
import { lotsOf } from '../../bench/work/lots.ts';
import { work as orderOfWork } from '../../bench/work/work.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { bottom } from '../../geometry/box.ts';
import { defined } from '../../problems/defined.ts';
import { type Block, moved } from '../../text/block.ts';
import { type Entry, numbered, piecesOf } from '../../text/entries.ts';
import { columnsOf, flow } from '../../text/flow.ts';
import { ellipsized, widthOf } from '../../text/line.ts';
import { line } from '../../text/paragraph.ts';
import { TEXT } from '../../text/styles.ts';
import { below, benchArea, benchSheet, GUTTER } from '../bench-page.ts';
import { blankBlock } from './blanks.ts';
import { checks, checkTable } from './checks.ts';
import { ticketFoot, ticketHead } from './head.ts';
import { lotEntries } from './lot-entries.ts';
import { cautions, materialRows } from './materials.ts';
import type { TicketOptions } from './model.ts';
import { type LotPart, lotParts } from './parts.ts';
import { rowRecord, settingRows } from './rows.ts';
import { setUpSteps } from './steps.ts';

/** The job on as few pages as it takes, in the order in which the bench works. */
export function ticket(work: BenchJob, options: TicketOptions): readonly Drawing[] {
  const { paper, fonts } = options;
  const { job, mat } = work;
  const area = benchArea(paper);
  const head = ticketHead(work, area.width, options);
  const foot = ticketFoot(cautions(mat, job), area.width, fonts);
  const room = { ...area, height: area.height - foot.height - BEFORE_FOOT };
  const columns = (page: number) =>
    columnsOf(below(room, page === 0 ? head.height + AFTER_HEAD : CONTINUED), 2, GUTTER);
  const listed = entries(work, columns(0)[0]!.width, fonts);
  const { pages } = flow(piecesOf(numbered(listed), fonts), { columns, even: true });
  return pages.map(({ items }, index): Drawing => {
    const above = index === 0 ? head : continued(work, index, pages.length, area.width, fonts);
    return benchSheet(`${job.title}, bench ticket`, 'ticket', { jobs: [work], paper, fonts }, [
      ...moved(above.items, area.x, area.y),
      ...items,
      ...moved(foot.items, area.x, bottom(area) - foot.height),
    ]);
  });
}

const AFTER_HEAD = 4;
const BEFORE_FOOT = 3.5;
const CONTINUED = 8;

function continued({ job, number }: BenchJob, index: number, count: number, width: number, fonts: Fonts): Block {
  const page = `, page ${index + 1} of ${count}`;
  const title = `${number === undefined ? '' : `${number}  `}${job.title}`;
  return line(`${ellipsized(title, TEXT, width - widthOf(page, TEXT, fonts), fonts)}${page}`, TEXT, fonts);
}

/** The job worked alone, lot by lot. */
const partsOf = (work: BenchJob): readonly LotPart[] => lotParts(orderOfWork([work]), lotsOf([work]));

/** For columns of a width. */
function entries(work: BenchJob, column: number, fonts: Fonts): readonly Entry[] {
  const { job, mat, strokes } = work;
  return [
    { kind: 'section', text: 'Blanks' },
    ...mat.layers.map(
      (_, i): Entry => ({ kind: 'figure', make: (width, { text }) => blankBlock(mat, job, i, width, text, fonts) }),
    ),
    { kind: 'section', text: 'Set up' },
    ...setUpSteps(mat, job, strokes).map((text): Entry => ({ kind: 'action', text })),
    ...partsOf(work).flatMap((part) => lotEntries(work, part, column, fonts)),
    { kind: 'section', text: 'Check', aside: 'sides seen from the FACE' },
    checkTable(checks(mat, job)),
    { kind: 'section', text: 'Fit up' },
    ...materialRows(mat, job).map(({ name, value }): Entry => ({ kind: 'row', name, value })),
  ];
}

/** What the ticket says, as data; lengths in mm but for what is printed. */
export function ticketRecord(work: BenchJob) {
  const { job, mat, number } = work;
  const parts = partsOf(work);
  return {
    title: job.title,
    ...defined({ number }),
    count: job.count,
    stack: job.bench.stack,
    layers: mat.layers.map(({ name, blank }, i) => ({
      layer: i + 1,
      name,
      blank,
      settings: parts
        .filter(({ lot }) => lot.work === 'opening' && lot.layer === i + 1)
        .flatMap((part) => settingRows(part, job.units))
        .map((row) => rowRecord(row, job)),
    })),
    checks: checks(mat, job),
    materials: materialRows(mat, job),
  };
}
