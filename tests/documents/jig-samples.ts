import type { Drawing, Item, LineItem, TextItem } from '../../src/drawing/model.ts';
import { type OutputFile, prepare, solveJob, write } from '../../src/index.ts';
import { type Result, succeed } from '../../src/problems/problem.ts';
import { sheetsIn } from '../outputs/sheets.ts';

/** A shop and a job of the print room that every jig can be made from. */
export const SHOP = `units: in
boards:
  bone-4: {name: Bone, thickness: 1.4 mm, plies: 4, colour: "#efe9dc"}
  bone-8: {name: Bone 8-ply, thickness: 2.9 mm, plies: 8, colour: "#efe9dc"}
  slate-4: {name: Slate, thickness: 1.4 mm, plies: 4, colour: "#5c6670"}
heads:
  pull-45: {bevel: 45, opening: left, start: 1.2 mm, stop: -0.4 mm, overrun: 0.25 mm}
guide: {graduation: 1/16 in, longest: 12 in, setAt: 1.4 mm, a: 0.2 mm, b: 1.002}
printers: {office: {x: 0.9965, y: 0.998}}
sizes: [5 x 7, 8 x 10, 11 x 14, 16 x 20, 20 x 24]
frames: {ash-16x20: {name: Ash, nominal: 16 x 20 in, lip: 1/4 in}}
`;

export const JOB = `title: Heron, linocut
units: in
mat:
  outer: 16 x 20
  weighting: {add: 1/2}
  layers: [{board: bone-4}, {board: slate-4, reveal: 1/4, trimBack: 1/8}]
openings: [{artwork: 10 1/2 x 13 1/2, overlap: 1/4}]
bench: {head: pull-45}
print: {paper: letter}
`;

export const METRIC_SHOP = SHOP.replace('units: in', 'units: mm').replace(
  /^sizes:.*$/m,
  'sizes: [130 x 180, 180 x 240, 240 x 300, 300 x 400]',
);
export const METRIC_JOB = JOB.replace('units: in', 'units: mm')
  .replace('outer: 16 x 20', 'outer: 400 x 500')
  .replace('add: 1/2', 'add: 12')
  .replace('reveal: 1/4, trimBack: 1/8', 'reveal: 6, trimBack: 3')
  .replace('10 1/2 x 13 1/2, overlap: 1/4', '270 x 340, overlap: 6')
  .replace('paper: letter', 'paper: a4');

export interface JigWish {
  readonly paper?: string;
  readonly shop?: string;
  readonly job?: string | undefined;
  readonly cut?: readonly string[];
  readonly thickness?: string;
  readonly head?: string;
  readonly printer?: string;
}

export interface MadeJig {
  readonly title: string;
  readonly sheets: number;
  readonly printer: string;
  readonly drawings: readonly Drawing[];
  readonly files: readonly OutputFile[];
}

export async function jig(kind: string, wish: JigWish = {}): Promise<Result<MadeJig>> {
  const { shop = SHOP, job, ...rest } = wish;
  const source = shop === '' ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const solved = job === undefined ? undefined : solveJob(job, { file: 'heron.yaml', ...source });
  if (solved?.ok === false) return solved;
  const prepared = await prepare(
    'jig',
    { jobs: solved === undefined ? [] : [solved.value], ...source },
    { kind, ...rest },
  );
  if (!prepared.ok) return prepared;
  const files = await write(prepared.value);
  if (!files.ok) return files;
  const drawings = sheetsIn(prepared.value);
  return succeed({ ...prepared.value.drawn.record, drawings, files: files.value }, prepared.warnings);
}

export async function made(kind: string, wish: JigWish = {}): Promise<MadeJig & { readonly codes: readonly string[] }> {
  const result = await jig(kind, wish);
  if (!result.ok) throw new Error(`${kind}: ${JSON.stringify(result.problems)}`);
  return { ...result.value, codes: result.warnings.map((w) => w.code) };
}

export const itemsOf = (drawing: Drawing): readonly Item[] => drawing.groups.flatMap((group) => group.items);
export const textsOf = (drawing: Drawing): readonly TextItem[] =>
  itemsOf(drawing).filter((item): item is TextItem => item.kind === 'text');

export function lineNamed(drawing: Drawing, id: string): LineItem {
  const found = itemsOf(drawing).find((item): item is LineItem => item.kind === 'line' && item.id === id);
  if (found === undefined) throw new Error(`no line ${id}`);
  return found;
}
