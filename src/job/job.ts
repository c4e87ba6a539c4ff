import { nearest } from '../problems/nearest.ts';
import { error, type Problem, warning } from '../problems/problem.ts';
import * as defaults from './defaults.ts';
import { defined } from './defined.ts';
import type { JobInput } from './job-schema.ts';
import type {
  BenchRequest,
  Bevel,
  Board,
  Head,
  Job,
  LayerRequest,
  MatRequest,
  OpeningRequest,
  PrintRequest,
  Shop,
  Units,
} from './model.ts';
import { paperOf } from './paper.ts';
import { everySide } from './shop.ts';

/** The job with everything looked up in the shop. Where problems hold an error, `job` is not to be used. */
export function jobFrom(
  input: JobInput,
  shop: Shop,
  units: Units,
  name: string,
): { readonly job: Job; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const bench = benchFrom(input.bench, shop, units, problems);
  const job: Job = {
    title: input.title ?? name,
    units,
    mat: matFrom(input.mat ?? {}, bench, input.bench?.head !== undefined, shop, units, problems),
    openings: input.openings.map(openingFrom),
    count: input.count ?? 1,
    bench,
    print: printFrom(input.print ?? {}, shop, units, problems),
    ...defined({ customer: input.customer }),
  };
  return { job, problems };
}

/** A named thing of the shop; where it is not there, a problem names the nearest one and the usual one is taken. */
function lookUp<T>(
  what: string,
  name: string,
  known: ReadonlyMap<string, T>,
  path: Problem['path'],
  problems: Problem[],
): T | undefined {
  const found = known.get(name);
  if (found !== undefined) return found;
  const names = [...known.keys()];
  const near = nearest(name, names);
  const there =
    names.length === 0
      ? `the shop’s file lists no ${what}`
      : `known: ${names.slice(0, 12).join(', ')}${names.length > 12 ? ' …' : ''}`;
  problems.push(
    error(
      `${what}-unknown`,
      path,
      `the shop has no ${what} called ${name}`,
      near === undefined ? there : `did you mean ${near}? ${there}`,
    ),
  );
  return undefined;
}

function benchFrom(input: JobInput['bench'], shop: Shop, units: Units, problems: Problem[]): BenchRequest {
  const head =
    input?.head === undefined ? undefined : lookUp('head', input.head, shop.heads, ['bench', 'head'], problems);
  const guide = shop.guide ?? defaults.guide(units);
  return {
    head: head ?? defaults.HEAD,
    guide,
    graduation: input?.graduation ?? guide.graduation,
    snap: input?.snap ?? defaults.SNAP,
    stack: input?.stack ?? defaults.STACK,
    ...defined({ hinge: input?.hinge }),
  };
}

function matFrom(
  input: NonNullable<JobInput['mat']>,
  bench: BenchRequest,
  headNamed: boolean,
  shop: Shop,
  units: Units,
  problems: Problem[],
): MatRequest {
  const frame = input.frame;
  const layers = (input.layers ?? [{}]).map((layer, index) =>
    layerFrom(layer, index, bench, headNamed, shop, units, problems),
  );
  return {
    border: defined(input.border ?? {}),
    layers,
    ...defined({
      outer: input.outer,
      weighting: input.weighting,
      frame:
        frame === undefined
          ? undefined
          : {
              clearance: frame.clearance ?? defaults.clearance(units),
              lip: frame.lip ?? defaults.LIP,
              ...defined({ inside: frame.inside, nominal: frame.nominal }),
            },
    }),
  };
}

type LayerInput = NonNullable<NonNullable<JobInput['mat']>['layers']>[number];

function layerFrom(
  input: LayerInput,
  index: number,
  bench: BenchRequest,
  headNamed: boolean,
  shop: Shop,
  units: Units,
  problems: Problem[],
): LayerRequest {
  const path = ['mat', 'layers', index];
  const bevel = bevelFrom(input.bevel, bench.head);
  if (headNamed && bevel.angle !== bench.head.bevel) {
    problems.push(
      warning(
        'bevel-not-head',
        [...path, 'bevel'],
        `the layer asks for a bevel of ${bevel.angle}°, but the head ${bench.head.id} cuts ${bench.head.bevel}°`,
        `the pattern is drawn for ${bevel.angle}°: cut it with a head of that angle`,
      ),
    );
  }
  if (index === 0 && input.reveal !== undefined) {
    problems.push(
      error(
        'reveal-top',
        [...path, 'reveal'],
        'the top mat has no layer above it to be revealed from',
        'move the reveal to the layer below',
      ),
    );
  }
  return {
    board: boardOf(input.board, index, shop, problems),
    bevel,
    trimBack: input.trimBack ?? defaults.trimBack(units, index, bench.stack),
    ...defined({ reveal: input.reveal }),
  };
}

function bevelFrom(input: LayerInput['bevel'], head: Head): Bevel {
  return { angle: input?.angle ?? head.bevel, reverse: input?.reverse ?? false };
}

function boardOf(input: LayerInput['board'], index: number, shop: Shop, problems: Problem[]): Board {
  const path = ['mat', 'layers', index, 'board'];
  if (input === undefined) return defaults.BOARD;
  if (typeof input === 'string') return lookUp('board', input, shop.boards, path, problems) ?? defaults.BOARD;
  return {
    id: input.name ?? `board-${index + 1}`,
    name: input.name ?? `board ${index + 1}`,
    thickness: input.thickness,
    colour: input.colour ?? defaults.BOARD_COLOUR,
    core: input.core ?? defaults.BOARD_CORE,
    sheets: [],
    directional: false,
    ...defined({ plies: input.plies }),
  };
}

function openingFrom(input: JobInput['openings'][number]): OpeningRequest {
  return {
    shape: input.shape ?? defaults.SHAPE,
    overlap: defined(input.overlap ?? {}),
    measure: input.measure ?? (input.float === undefined ? 'face' : 'sight'),
    ...defined({
      name: input.name,
      artwork: input.artwork,
      float: input.float === undefined ? undefined : defined(input.float),
      size: input.size,
    }),
  };
}

function printFrom(input: NonNullable<JobInput['print']>, shop: Shop, units: Units, problems: Problem[]): PrintRequest {
  const printer =
    input.printer === undefined
      ? undefined
      : lookUp('printer', input.printer, shop.printers, ['print', 'printer'], problems);
  const paper = input.paper === undefined ? defaults.paper(units) : paperOf(input.paper, shop.papers, units, problems);
  return {
    paper,
    margin: everySide(input.margin, defaults.allSides(defaults.margin(units))),
    lap: input.lap ?? defaults.lap(units),
    join: input.join ?? defaults.JOIN,
    transfer: input.transfer ?? defaults.TRANSFER,
    paperThickness: input.paperThickness ?? defaults.PAPER_THICKNESS,
    ...defined({ printer }),
  };
}
