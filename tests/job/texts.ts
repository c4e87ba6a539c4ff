import { readJob } from '../../src/job/read.ts';
import type { Problem, Result } from '../../src/problems/problem.ts';
import { readShop } from '../../src/shop/read-shop.ts';

/** The print room's job and shop, as the documentation shows them. */
export const HERON = `title: Heron, linocut
customer: Saltmarsh Print Room
units: in
mat:
  outer: 16 x 20
  weighting: {add: 1/2}
  layers:
    - board: bone-4
    - {board: slate-4, reveal: 1/4, trimBack: 1/8}
openings:
  - shape: rectangle
    artwork: 10 1/2 x 13 1/2
    overlap: 1/4
    measure: face
count: 1
bench: {head: pull-45, graduation: 1/16, snap: true, stack: together}
print: {paper: letter, margin: 1/4, lap: 1/2, transfer: prick}
`;

export const SHOP = `boards:
  bone-4: {thickness: 1.4 mm, colour: "#efe9dc", sheets: [32 x 40 in], price: 9.50}
  slate-4: {name: Slate, thickness: 1.5 mm, plies: 4, colour: "#5C6670", core: black, directional: true}
heads:
  pull-45: {bevel: 45, opening: left, straightedge: 0, start: 1.2 mm, stop: -0.4 mm, overrun: 0.25 mm}
guide: {graduation: 1/16 in, longest: 12 in, setAt: 1.4 mm, a: 0, b: 1}
printers: {office: {x: 0.9965, y: 0.998}}
`;

/** Nothing but an opening and a size. */
export const SMALL = `mat:
  outer: 8 x 10
openings:
  - artwork: 5 x 7
    overlap: 1/8
`;

export const read = (text: string, shopText?: string, file = 'jobs/heron.yaml') =>
  readJob({ text, file, ...(shopText === undefined ? {} : { shopText, shopFile: 'shop.yaml' }) });

export const shopOf = (text: string, file = 'shop.yaml') => readShop({ text, file });

/** The value; a test that gets problems instead fails with them. */
export function accepted<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

export function refused<T>(result: Result<T>): readonly Problem[] {
  if (result.ok) throw new Error('it was accepted');
  return result.problems;
}

export const jobOf = (text: string, shopText?: string, file?: string) => accepted(read(text, shopText, file)).job;

/** The codes of the problems; none where it was accepted. */
export const codes = <T>(result: Result<T>): readonly string[] =>
  result.ok ? [] : result.problems.map(({ code }) => code);
