import type { Drawing, Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { type Density, flowSections, inside, type Section } from '../../text/bench-flow.ts';
import { action, moved, type Part, pair, scaled, TEXT, textPart } from '../../text/bench-type.ts';
import { blankPart } from './blanks.ts';
import { checkParts, checks } from './checks.ts';
import { ticketFoot, ticketHead } from './head.ts';
import { layerParts } from './layer.ts';
import { cautions, materialRows } from './materials.ts';
import type { BenchJob, TicketOptions } from './model.ts';
import { benchSheet, TICKET_MARGIN } from './page.ts';
import { rowRecord, settingRows } from './rows.ts';
import { assemblySteps, joiningSteps, layerLine, layerSteps, setUpSteps } from './steps.ts';

/** The job on as few pages as it takes, in the order in which the bench works. */
export function ticket(work: BenchJob, options: TicketOptions): readonly Drawing[] {
  const { paper, fonts } = options;
  const { job, mat } = work;
  const page = inside(paper, TICKET_MARGIN);
  const head = ticketHead(work, page.width, options);
  const foot = ticketFoot(cautions(mat, job), page.width, fonts);
  const room = (index: number) => {
    const top = index === 0 ? head.height + AFTER_HEAD : CONTINUED;
    return box(page.x, page.y + top, page.width, page.height - top - foot.height - BEFORE_FOOT);
  };
  const { pages } = flowSections(sections(work, fonts), room, fonts);
  return pages.map((flowed, index): Drawing => {
    const items: Item[] = [
      ...moved(
        index === 0 ? head.items : continued(work, index, pages.length, page.width, fonts).items,
        page.x,
        page.y,
      ),
      ...flowed.items,
      ...moved(foot.items, page.x, page.y + page.height - foot.height),
    ];
    return benchSheet(`${job.title}, bench ticket`, 'ticket', paper, items);
  });
}

const AFTER_HEAD = 4;
const BEFORE_FOOT = 3.5;
const CONTINUED = 8;

function continued({ job, number }: BenchJob, index: number, count: number, width: number, fonts: Fonts): Part {
  const words = `${number === undefined ? '' : `${number}  `}${job.title}, page ${index + 1} of ${count}`;
  const { items, height } = textPart(words, width, TEXT, fonts);
  // A title of many lines is named by its first.
  const first = items.slice(0, 1);
  return { items: first, height };
}

function sections(work: BenchJob, fonts: Fonts): readonly Section[] {
  const { job, mat, strokes, steps } = work;
  const together = job.bench.stack === 'together';
  const actions =
    (texts: readonly string[]) =>
    (width: number, { scale }: Density) =>
      texts.map((text) => action(text, width, scaled(TEXT, scale), fonts));
  const cut = [...new Set(strokes.map(({ layer }) => layer))];
  // A layer of curves alone has no stroke and still has its place.
  const order = [...cut, ...mat.layers.map((_, i) => i + 1).filter((layer) => !cut.includes(layer))];
  const list: Section[] = [
    {
      title: 'Blanks',
      parts: (width, density) => mat.layers.map((_, i) => blankPart(mat, job, i, width, density, fonts)),
    },
    { title: 'Set up', parts: actions(setUpSteps(mat, job, strokes)) },
  ];
  for (const layer of order) {
    const behind = together && layer > 1 ? assemblySteps(mat, job, layer - 1) : [];
    list.push({
      title: `${behind.length === 0 ? 'Cut' : 'Fix and cut'} ${mat.layers[layer - 1]!.name}`,
      aside: layerLine(mat, layer - 1),
      parts: (width, density) => [
        ...actions([...behind, ...layerSteps(mat, job, layer - 1, strokes)])(width, density),
        ...layerParts(work, layer, settingRows(strokes, steps, layer, job.units), width, density.air, fonts),
      ],
    });
  }
  if (!together && mat.layers.length > 1) {
    list.push({ title: 'Put the mats together', parts: actions(joiningSteps(mat, job)) });
  }
  list.push(
    { title: 'Check', parts: (width, { scale }) => checkParts(checks(mat, job), width, scale, fonts) },
    {
      title: 'Fit up',
      parts: (width, { scale }) =>
        materialRows(mat, job).map(({ name, value }) =>
          pair(name, value, 18 * scale, width, scaled(TEXT, scale), fonts),
        ),
    },
  );
  return list;
}

/** What the ticket says, as data; lengths in mm but for what is printed. */
export function ticketRecord({ job, mat, strokes, steps, number }: BenchJob) {
  return {
    title: job.title,
    ...(number === undefined ? {} : { number }),
    count: job.count,
    stack: job.bench.stack,
    layers: mat.layers.map(({ name, blank }, i) => ({
      layer: i + 1,
      name,
      blank,
      settings: settingRows(strokes, steps, i + 1, job.units).map((row) => rowRecord(row, job)),
    })),
    checks: checks(mat, job),
    materials: materialRows(mat, job),
  };
}
