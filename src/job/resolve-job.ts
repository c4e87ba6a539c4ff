import { type BySide, SIDES, type SomeSides } from '../geometry/sides.ts';
import { findPaper } from '../papers/find.ts';
import { error, type Problem } from '../problems/problem.ts';
import { defined } from '../read/fields/defined.ts';
import type { GivenBySides } from '../read/fields/length-fields.ts';
import { lookUp } from '../read/fields/look-up.ts';
import * as defaults from '../shop/defaults.ts';
import type { Printer } from '../shop/printer.ts';
import { everySide } from '../shop/resolve-shop.ts';
import type { Shop } from '../shop/shop.ts';
import { showLength } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import type { BenchRequest } from './bench.ts';
import type { Job } from './job.ts';
import type { JobInput } from './job-schema.ts';
import type { MatRequest, Weighting } from './mat.ts';
import type { PrintRequest } from './print.ts';
import { asCutFrom } from './resolve-as-cut.ts';
import { frameFrom, rebateProblems } from './resolve-frame.ts';
import { layersFrom } from './resolve-layers.ts';
import { letteringFrom } from './resolve-lettering.ts';
import { arrangeFrom, openingFrom } from './resolve-openings.ts';

/** The job with everything looked up in the shop. Where problems hold an error, it is not to be used. */
export function jobFrom(
  input: JobInput,
  shop: Shop,
  units: Units,
  name: string,
): { readonly job: Job; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const bench = benchFrom(input.bench ?? {}, shop, units, problems);
  const openings = input.openings.map((opening) => openingFrom(opening, units, bench.head.bevel));
  const mat = matFrom(input, bench, shop, units, problems);
  const asCut =
    input.asCut === undefined ? undefined : asCutFrom(input.asCut, mat.layers.length, openings.length, problems);
  const free = openings.filter((opening) => opening.place === undefined).length;
  const job: Job = {
    title: input.title ?? name,
    units,
    mat,
    openings,
    count: input.count ?? defaults.COUNT,
    bench,
    print: printFrom(input.print ?? {}, shop, units, problems),
    ...defined({
      number: input.number,
      customer: input.customer,
      arrange: arrangeFrom(input.arrange, free),
      lettering: letteringFrom(input.lettering, units),
      asCut,
    }),
  };
  return { job, problems };
}

function benchFrom(given: NonNullable<JobInput['bench']>, shop: Shop, units: Units, problems: Problem[]): BenchRequest {
  const guide = shop.guide ?? defaults.guide(units);
  return {
    head: lookUp('head', given.head, shop.heads, ['bench', 'head'], problems) ?? defaults.HEAD,
    guide,
    graduation: given.graduation ?? guide.graduation,
    snap: given.snap ?? defaults.SNAP,
    stack: given.stack ?? defaults.STACK,
    ...defined({ hinge: given.hinge }),
  };
}

function matFrom(input: JobInput, bench: BenchRequest, shop: Shop, units: Units, problems: Problem[]): MatRequest {
  const given = input.mat ?? {};
  const headNamed = input.bench?.head !== undefined;
  const layers = layersFrom(given.layers, bench, headNamed, shop, units, problems);
  const frame = given.frame === undefined ? undefined : frameFrom(given.frame, shop, units, problems);
  if (frame !== undefined) problems.push(...rebateProblems(frame, layers, units));
  return {
    border: borderFrom(given.border ?? {}, given.weighting),
    layers,
    ...defined({ outer: given.outer, weighting: given.weighting, leastBar: given.leastBar, frame }),
  };
}

/** One length for every side is the weighted mat's narrower border: the weighting says how much more the others have. */
function borderFrom(given: GivenBySides, weighting: Weighting | undefined): SomeSides {
  if (given.single !== true || weighting === undefined || weighting.kind === 'none') return { ...given };
  const { top, left, right } = given;
  return weighting.kind === 'diagonal' ? defined({ left, right }) : defined({ top, left, right });
}

function printFrom(given: NonNullable<JobInput['print']>, shop: Shop, units: Units, problems: Problem[]): PrintRequest {
  const printer = lookUp('printer', given.printer, shop.printers, ['print', 'printer'], problems);
  const paper = given.paper ?? defaults.paper(units);
  const custom = [...shop.papers].map(([id, size]) => ({ id, name: id, ...size }));
  const found = findPaper(paper, { custom, unit: units, path: ['print', 'paper'] });
  if (!found.ok) problems.push(...found.problems);
  return {
    paper,
    margin: marginFrom(given.margin ?? {}, printer, units, problems),
    lap: given.lap ?? defaults.lap(units),
    join: given.join ?? defaults.JOIN,
    transfer: given.transfer ?? defaults.TRANSFER,
    paperThickness: given.paperThickness ?? defaults.PAPER_THICKNESS,
    ...defined({ printer }),
  };
}

/** Never less than what the printer leaves blank: the usual margin grows to it, one that was asked for is an error. */
function marginFrom(
  given: NonNullable<NonNullable<JobInput['print']>['margin']>,
  printer: Printer | undefined,
  units: Units,
  problems: Problem[],
): BySide<number> {
  const blank = printer?.margin ?? defaults.allSides(0);
  const usual = defaults.margin(units);
  const margin = everySide(given, {
    top: Math.max(usual, blank.top),
    right: Math.max(usual, blank.right),
    bottom: Math.max(usual, blank.bottom),
    left: Math.max(usual, blank.left),
  });
  const short = SIDES.filter((side) => margin[side] < blank[side] - 1e-9);
  if (printer === undefined || short.length === 0) return margin;
  const show = (mm: number): string => showLength(mm, units);
  const sides = short.map((side) => `${show(blank[side])} at the ${side}`).join(', ');
  const message = `the margin is smaller than what the printer ${printer.id} leaves blank: ${sides}`;
  problems.push(error('margin-unprintable', ['print', 'margin'], message, 'make the margin as large, or leave it out'));
  return margin;
}
