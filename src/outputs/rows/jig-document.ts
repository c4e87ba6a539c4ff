import type { Jig, JigContext, JigEntry } from '../../documents/jigs/jig.ts';
import { JIGS } from '../../documents/jigs/jigs.ts';
import type { Document, Page } from '../../drawing/document.ts';
import type { Drawing } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { allSides } from '../../geometry/sides.ts';
import { sheetsDocument } from '../../paper/sheets.ts';
import { defined } from '../../problems/defined.ts';
import { nearest } from '../../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { quoted } from '../../problems/quoted.ts';
import { printable, unscaled } from '../../settle/printable.ts';
import { UNCORRECTED } from '../../settle/printer.ts';
import type { Settled } from '../../settle/settled.ts';
import { type CalibrationState, notYet } from '../../shop/calibrated.ts';
import { usualGuide } from '../../shop/guide.ts';
import { HEAD, type Head, NO_HEAD } from '../../shop/head.ts';
import type { Shop } from '../../shop/shop.ts';
import { parseLength } from '../../units/parse.ts';

export interface JigRequest {
  readonly shop: Shop;
  /** What the shop's file says itself that it was calibrated. */
  readonly state: CalibrationState;
  readonly fonts: Fonts;
  readonly solved?: JigContext['solved'];
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
  /** What its sheets say of their printer. */
  readonly stamp: string;
}

/** The jig of that name. Errors: `jig-unknown`. */
export function findJig(kind: string): Result<JigEntry> {
  const entry = JIGS.find((each) => each.kind === kind);
  if (entry !== undefined) return succeed(entry);
  const known = JIGS.map((each) => each.kind);
  return fail([unknown('jig', kind, known)]);
}

/**
 * The sheets of a jig as pages, on the sheet that was settled. All are corrected for the printer but those that measure
 * it. Errors: `jig-job-needed`, `head-unknown`, `jig-thickness`, those of settling, and the jig's own.
 */
export function jigDocument(entry: JigEntry, settled: Result<Settled>, request: JigRequest): Result<JigDocument> {
  if (entry.needs === 'job' && request.solved === undefined) {
    const hint = `name one: matwright jig ${entry.kind} job.yaml`;
    return fail([error('jig-job-needed', [], `the jig ${entry.kind} is made for a job`, hint)]);
  }
  const problems = settled.ok ? [] : [...settled.problems];
  const head = headOf(request, problems);
  const thicknesses = thicknessesOf(request.thickness, problems);
  if (!settled.ok || problems.length > 0) return fail(problems);
  const { scale, ...context } = contextOf(entry, settled.value, request);
  const made = entry.make({ ...context, head, thicknesses });
  if (!made.ok) return made;
  return succeed({ ...documentOf(made.value, scale), stamp: context.stamp }, made.warnings);
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

/** The one that is named, on the command or in the job; else the shop's only one. */
function headOf({ shop, solved, head: name }: JigRequest, problems: Problem[]): Head {
  const { heads } = shop;
  if (name === NO_HEAD) return HEAD;
  if (name !== undefined && !heads.has(name)) problems.push(unknown('head', name, [...heads.keys()]));
  const only = heads.size === 1 ? [...heads.values()][0] : undefined;
  return (name === undefined ? (solved?.job.bench.head ?? only) : heads.get(name)) ?? HEAD;
}

type Placed = Omit<JigContext, 'head' | 'thicknesses'> & { readonly scale: Page['scale'] };

function contextOf(entry: JigEntry, settled: Settled, { shop, solved, state, fonts }: JigRequest): Placed {
  const { units, sheet, printer } = settled;
  const uncorrected = entry.uncorrected === true;
  const margin = entry.margin === undefined ? settled.margin : allSides(entry.margin);
  const printing = { margin, ...defined({ printer }) };
  const page = printable(sheet, uncorrected ? unscaled(printing) : printing, entry.sideways === true);
  return {
    paper: { id: sheet.id, name: sheet.name, ...page.paper },
    area: page.area,
    scale: page.scale,
    stamp: uncorrected ? UNCORRECTED : settled.stamp,
    units,
    shop,
    fonts,
    guide: solved?.job.bench.guide ?? shop.guide ?? usualGuide(units),
    notYet:
      entry.kind === 'head' || entry.kind === 'head-proof'
        ? notYet('head', state)
        : entry.kind === 'guide' || entry.kind === 'bevel'
          ? notYet(entry.kind, state)
          : [],
    ...defined({ printer: printer?.id, solved }),
  };
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

function documentOf({ title, sheets, cut }: Jig, scale: Page['scale']): Omit<JigDocument, 'stamp'> {
  const document = sheetsDocument({ title, subject: title, sheets, scale });
  return { document, drawings: sheets, ...defined({ cut }) };
}
