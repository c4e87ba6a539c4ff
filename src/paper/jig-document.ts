import type { Jig, JigContext, JigEntry } from '../documents/jigs/jig.ts';
import { JIGS } from '../documents/jigs/jigs.ts';
import type { Document, Page } from '../drawing/document.ts';
import type { Drawing } from '../drawing/model.ts';
import { allSides } from '../geometry/sides.ts';
import { usualMargin, usualPaper } from '../job/print.ts';
import { findPaper } from '../papers/find.ts';
import { nearest } from '../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import { type CalibrationState, notYet } from '../shop/calibrated.ts';
import { usualGuide } from '../shop/guide.ts';
import { HEAD } from '../shop/head.ts';
import type { Printer } from '../shop/printer.ts';
import { truePrinter } from '../shop/printer.ts';
import type { Shop } from '../shop/shop.ts';
import { parseLength } from '../units/parse.ts';
import type { Units } from '../units/units.ts';
import { sheetOf } from './area.ts';
import { printerWords } from './furniture/sheet-label.ts';
import { sheetsDocument } from './sheets.ts';

export interface JigRequest {
  readonly shop: Shop;
  /** What the shop's file says itself that it was calibrated. */
  readonly state: CalibrationState;
  readonly solved?: JigContext['solved'];
  /** Instead of the job's paper, or the usual one. */
  readonly paper?: string;
  /** Of the shop; else the job's, else the only one that there is. */
  readonly printer?: string;
  /** Of the shop; else the job's, else the only one that there is. */
  readonly head?: string;
  /** With commas: `1.4 mm, 3 mm`; bare numbers are mm. */
  readonly thickness?: string;
}

export interface JigDocument {
  readonly document: Document;
  /** What of it goes to a cutter, full scale. */
  readonly cut?: Drawing;
  readonly drawings: readonly Drawing[];
}

/**
 * The sheets of a jig as pages. All are corrected for the printer but those that measure it. Errors: `jig-unknown`,
 * `jig-job-needed`, those of finding the paper, the printer and the head, and the jig's own.
 */
export function jigDocument(kind: string, request: JigRequest): Result<JigDocument> {
  const entry = JIGS.find((each) => each.kind === kind);
  if (entry === undefined)
    return fail([
      unknown(
        'jig',
        kind,
        JIGS.map((each) => each.kind),
      ),
    ]);
  if (entry.needs === 'job' && request.solved === undefined) {
    const hint = `name one: matwright jig ${kind} job.yaml`;
    return fail([error('jig-job-needed', [], `the jig ${kind} is made for a job`, hint)]);
  }
  const context = contextOf(entry, request);
  if (!context.ok) return context;
  const { scale, ...rest } = context.value;
  const made = entry.make(rest);
  if (!made.ok) return made;
  return succeed(documentOf(made.value, scale), made.warnings);
}

function unknown(what: string, name: string, known: readonly string[]): Problem {
  const near = nearest(name, known);
  const hint = `${near === undefined ? '' : `did you mean ${near}? `}there are ${known.join(', ')}`;
  return error(
    `${what}-unknown`,
    [],
    `there is no ${what} ${quoted(name)}`,
    known.length === 0 ? `describe it in shop.yaml` : hint,
  );
}

function contextOf(entry: JigEntry, request: JigRequest): Result<JigContext & { readonly scale: Page['scale'] }> {
  const { shop, solved, state } = request;
  const units: Units = solved?.job.units ?? shop.units;
  const problems: Problem[] = [];
  const named = <T>(what: string, name: string | undefined, all: ReadonlyMap<string, T>): T | undefined => {
    if (name === undefined) return all.size === 1 ? [...all.values()][0] : undefined;
    if (!all.has(name)) problems.push(unknown(what, name, [...all.keys()]));
    return all.get(name);
  };
  // The printer's own jig may be for one that the shop does not know yet.
  const printer: Printer | undefined =
    entry.uncorrected === true && request.printer !== undefined && !shop.printers.has(request.printer)
      ? truePrinter(request.printer)
      : request.printer === undefined && solved?.job.print.printer !== undefined
        ? solved.job.print.printer
        : named('printer', request.printer, shop.printers);
  const jobHead = request.head === undefined ? solved?.job.bench.head : undefined;
  const head = jobHead ?? named('head', request.head, shop.heads) ?? HEAD;
  const custom = [...shop.papers].map(([id, size]) => ({ id, name: id, ...size }));
  const paperText = request.paper ?? solved?.job.print.paper ?? usualPaper(units);
  const paper = findPaper(paperText, { custom, unit: units, path: ['print', 'paper'] });
  if (!paper.ok) problems.push(...paper.problems);
  if (paper.ok && paper.value.kind !== 'sheet') {
    problems.push(
      error('jig-paper-sheet', ['print', 'paper'], 'a jig goes on sheets', 'name a sheet: letter, a4, a3 …'),
    );
  }
  const thicknesses = thicknessesOf(request.thickness, problems);
  if (!paper.ok || paper.value.kind !== 'sheet' || problems.length > 0) return fail(problems);
  const uncorrected = entry.uncorrected === true;
  const sheet = sheetOf(
    paper.value,
    {
      margin: allSides(entry.margin ?? usualMargin(units)),
      join: 'lap',
      ...(printer === undefined ? {} : { printer: uncorrected ? { ...printer, x: 1, y: 1 } : printer }),
    },
    entry.sideways === true,
  );
  const { id, name } = paper.value;
  return succeed({
    paper: { id, name, ...sheet.paper },
    area: sheet.area,
    scale: sheet.scale,
    stamp: uncorrected ? 'not corrected for any printer' : stampOf(printer, state),
    units,
    shop,
    head,
    guide: solved?.job.bench.guide ?? shop.guide ?? usualGuide(units),
    thicknesses,
    notYet:
      entry.kind === 'head' || entry.kind === 'head-proof'
        ? notYet('head', state)
        : entry.kind === 'guide' || entry.kind === 'bevel'
          ? notYet(entry.kind, state)
          : [],
    ...(printer === undefined ? {} : { printer: printer.id }),
    ...(solved === undefined ? {} : { solved }),
  });
}

function stampOf(printer: Printer | undefined, state: CalibrationState): string {
  if (printer === undefined) return 'not corrected: no printer is named';
  return (
    printerWords(printer) ??
    (state.printers.has(printer.id)
      ? `printer ${printer.id} prints true`
      : `printer ${printer.id} is not yet calibrated`)
  );
}

function thicknessesOf(text: string | undefined, problems: Problem[]): readonly number[] {
  const found = (text === undefined ? [] : text.split(',')).flatMap((part) => {
    const parsed = parseLength(part, 'mm');
    if (parsed.ok && parsed.value >= 0.1 && parsed.value <= 25) return [parsed.value];
    const why = parsed.ok ? `no board is ${part.trim()} thick` : parsed.message;
    problems.push(error('jig-thickness', [], why, 'write for example 1.4 mm, 3 mm'));
    return [];
  });
  return [...new Set(found)].sort((a, b) => a - b);
}

function documentOf({ title, sheets, cut }: Jig, scale: Page['scale']): JigDocument {
  const document = sheetsDocument({ title, subject: title, sheets, scale });
  return { document, drawings: sheets, ...(cut === undefined ? {} : { cut }) };
}
