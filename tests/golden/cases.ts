import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { BENCH_CASES } from './bench-cases.ts';
import { CUT_CASES } from './cut-cases.ts';
import { JIG_CASES } from './jig-cases.ts';
import { STOCK_CASES } from './stock-cases.ts';

const TOP = join(import.meta.dirname, '../..');

/** A job whose outputs have references in `golden/NAME/`. */
export interface Case {
  readonly name: string;
  /** A jig instead of the patterns. */
  readonly jig?: string;
  /** A sheet for the bench instead of the patterns. */
  readonly sheet?: string;
  /** A machine's files instead of the patterns. */
  readonly cut?: string;
  /** The jobs of a day's stock plan, by file, instead of a job's patterns. */
  readonly day?: Readonly<Record<string, string>>;
  readonly job: string;
  /** As problems and titles name it. */
  readonly file: string;
  readonly shop?: string;
  /** Where its pictures lie. */
  readonly folder?: string;
}

/** The job's text with the `shop.yaml` beside it. */
function fromFile(name: string, path: string): Case {
  const shop = join(dirname(path), 'shop.yaml');
  const job = readFileSync(path, 'utf8');
  return {
    name,
    job,
    file: basename(path),
    folder: dirname(path),
    ...(existsSync(shop) && { shop: readFileSync(shop, 'utf8') }),
  };
}

const JOB = /^(?!shop\.).*\.(?:ya?ml|json)$/;

/** Days of several jobs, whose case is their stock plan. */
const DAYS = /^monday[/\\]/;

/** Every job file in a folder of the top level and in the folders in it. */
function jobsIn(folder: string): Case[] {
  if (!existsSync(join(TOP, folder))) return [];
  const kind = folder.replace(/s$/, '');
  return readdirSync(join(TOP, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => JOB.test(basename(path)) && !DAYS.test(path))
    .sort()
    .map((path) => {
      const steps = path.slice(0, -extname(path).length).split(/[/\\]/);
      const named = steps.length > 1 && steps.at(-1) === 'job' ? steps.slice(0, -1) : steps;
      return fromFile([kind, ...named].join('-'), join(TOP, folder, path));
    });
}

const lopsided = `
title: Lopsided
units: mm
mat:
  border: {top: 61, right: 47, bottom: 89, left: 33}
  layers:
    - board: {name: grey, thickness: 1.4, colour: "#888888"}
openings:
  - size: 180 x 240
print: {paper: a4, margin: 10, lap: 12}
`;

const steep = `
title: Sixty degrees, reversed below
units: mm
mat:
  border: {top: 55, sides: 50, bottom: 60}
  layers:
    - {board: {name: thick, thickness: 3.2, colour: "#dddddd"}, bevel: 60}
    - {board: {name: thin, thickness: 1.4, colour: "#444444"}, bevel: {angle: 60, reverse: true}, reveal: 8}
openings:
  - size: 150 x 200
bench: {stack: apart}
print: {paper: a3, margin: 8, transfer: cut-through}
`;

const handHeldShop = `
units: mm
boards:
  white: {thickness: 1.5, colour: "#f8f8f4"}
heads:
  push-45: {bevel: 45, opening: right, straightedge: 38, start: 2.3, stop: 1.1, overrun: 0.4}
printers: {office: {x: 0.9965, y: 0.998}}
`;

const handHeld = `
title: Hand-held head
units: mm
mat:
  outer: 300 x 400
  layers: [{board: white}]
openings:
  - {artwork: 180 x 260, overlap: 5}
bench: {head: push-45}
print: {paper: legal, margin: 9, join: butt, printer: office}
`;

/** Every template, every example, and what neither of them has. */
export const CASES: readonly Case[] = [
  ...jobsIn('templates'),
  ...jobsIn('examples'),
  { name: 'lopsided', job: lopsided, file: 'lopsided.yaml' },
  { name: 'steep', job: steep, file: 'steep.yaml' },
  { name: 'hand-held', job: handHeld, file: 'hand-held.yaml', shop: handHeldShop },
  ...JIG_CASES,
  ...BENCH_CASES,
  ...CUT_CASES,
  ...STOCK_CASES,
];
