import type { Fonts } from '../fonts/model.ts';
import type { Size } from '../geometry/point.ts';
import { allSides } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import { usualMargin, usualPaper } from '../job/print.ts';
import { findPaper } from '../papers/find.ts';
import type { Paper, SheetPaper } from '../papers/model.ts';
import { defined } from '../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { showLength } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import { type Printing, printable, unscaled } from './printable.ts';
import { printerFor, stampOf } from './printer.ts';
import type { Settled, SettledSheet, SettleOptions } from './settled.ts';
import { wrongWords } from './words.ts';

/** What is to go on the paper: full-scale work, which may be joined; single sheets; single sheets with readings for the bench. */
export type PaperUse = 'full scale' | 'sheet' | 'readings';

export interface Question {
  /** The job, or the first of several. */
  readonly job?: Job;
  readonly shop: Shop;
  readonly options?: SettleOptions;
  readonly uses: readonly PaperUse[];
  /** Made for the texts that are to be set. */
  readonly fonts: Fonts;
  /** True where the printer may be one that the shop does not know yet. */
  readonly newPrinter?: boolean;
}

const PAPER: Problem['path'] = ['print', 'paper'];
/** What a caller said stands in no line of the job. */
const OPTION_PAPER: Problem['path'] = ['options', 'paper'];

/** Readings that are seen at arm's length, two columns of them, take that much. */
const LEAST = { width: 180, height: 200 };

/**
 * Paper, margins, printer and words for everything that is made of a job, or of a shop without one. Pure: the same
 * question has the same answer. Errors: those of finding the paper and of words, `printer-unknown`,
 * `sheet-paper`, `margins-too-wide`.
 */
export function settle({ job, shop, options = {}, uses, fonts, newPrinter = false }: Question): Result<Settled> {
  const units: Units = job?.units ?? options.units ?? shop.units;
  const problems: Problem[] = [...wrongWords(options)];
  const custom = [...shop.papers].map(([id, size]) => ({ id, name: id, ...size }));
  const text = options.paper ?? job?.print.paper ?? usualPaper(units);
  const place = options.paper === undefined ? PAPER : OPTION_PAPER;
  const paper = findPaper(text, { custom, unit: units, path: place });
  const printer = printerFor(
    {
      shop,
      mayBeNew: newPrinter,
      ...defined({ job, name: options.printer }),
    },
    problems,
  );
  const sheet = paper.ok ? sheetFor(paper.value, units, uses, options.paper !== undefined) : paper;
  if (!paper.ok || !sheet.ok || problems.length > 0) return fail([...(sheet.ok ? [] : sheet.problems), ...problems]);
  const margin = job?.print.margin ?? allSides(usualMargin(units));
  const printing = { margin, ...defined({ printer }) };
  const named = (options.printer ?? job?.print.printer) !== undefined;
  const settled = withMargins(sheet.value, printing);
  if (uses.some((use) => use !== 'full scale') && !roomy(settled, uses)) return fail([tooWide(settled, units)]);
  return succeed({
    units,
    paper: paper.value,
    sheet: settled,
    stamp: stampOf(printer, named),
    fonts,
    ...printing,
    ...defined({ date: options.date, number: options.number }),
  });
}

function withMargins(sheet: SheetPaper, printing: Printing): SettledSheet {
  const margined = (sideways: boolean) => {
    const { paper, margin, area } = printable(sheet, unscaled(printing), sideways);
    return { ...paper, margin, area };
  };
  return { ...sheet, ...margined(false), onItsSide: margined(true) };
}

/** The usual one where the paper is none, unless that was asked for what goes on single sheets alone. */
function sheetFor(paper: Paper, units: Units, uses: readonly PaperUse[], named: boolean): Result<SheetPaper> {
  if (paper.kind === 'sheet') return uses.includes('readings') ? large(paper) : succeed(paper);
  if (named && uses.length > 0 && !uses.includes('full scale')) {
    const message = `${paper.kind === 'roll' ? 'a roll' : 'one page'} is no single sheet, and this goes on single sheets of paper`;
    return fail([error('sheet-paper', PAPER, message, 'name a sheet: letter, a4, a3 …')]);
  }
  const usual = findPaper(usualPaper(units));
  if (usual.ok && usual.value.kind === 'sheet') return succeed(usual.value);
  return usual.ok ? fail([error('sheet-paper', PAPER, `${usual.value.name} is no sheet`)]) : usual;
}

/** Margins leave at least so much of a sheet, the more where readings stand on it. */
const roomy = ({ area }: SettledSheet, uses: readonly PaperUse[]): boolean =>
  uses.includes('readings') ? area.width >= 150 && area.height >= 170 : Math.min(area.width, area.height) >= 36;

function tooWide({ margin, name }: SettledSheet, units: Units): Problem {
  const show = (mm: number) => showLength(mm, units);
  const taken = `${show(margin.left)} and ${show(margin.right)} across, ${show(margin.top)} and ${show(margin.bottom)} down`;
  const message = `margins of ${taken} leave too little of ${name} to read from`;
  return error('margins-too-wide', ['print', 'margin'], message, 'make the margins smaller or take a larger paper');
}

function large(sheet: SheetPaper & Size): Result<SheetPaper> {
  if (sheet.width >= LEAST.width && sheet.height >= LEAST.height) return succeed(sheet);
  const message = `${sheet.name} is too small for readings at arm’s length`;
  return fail([error('sheet-paper', PAPER, message, 'take letter or a4')]);
}
