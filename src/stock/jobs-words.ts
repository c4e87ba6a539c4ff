import type { Size } from '../geometry/point.ts';
import type { Problem } from '../problems/problem.ts';
import { showLength, showSize } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import { type Blank, jobName, type Material } from './blanks.ts';
import type { StockInput, StockPiece, StockSheet } from './planner/model.ts';
import { trimOf } from './planner/trim.ts';
import type { StockJob, StockShop } from './stock-job.ts';

interface Context {
  readonly input: StockInput;
  readonly blanks: readonly Blank[];
  readonly material: Material;
  readonly jobs: readonly StockJob[];
  readonly shop: StockShop;
  readonly units: Units;
}

/** What the planner says of plain rectangles, said of jobs, layers and the shop's sheets, with places in their files. */
export function inJobsWords(problem: Problem, context: Context): Problem {
  const { blanks, jobs, material, shop } = context;
  const [list, index] = problem.path;
  if (list === 'pieces' && typeof index === 'number') {
    const blank = blanks[index]!;
    const path = blank.layer === undefined ? ['mat'] : ['mat', 'layers', blank.layer, 'board'];
    return placed(jobs[blank.job]!.locate, { ...problem, path, message: pieceMessage(problem, index, context) });
  }
  const section = shopSection(material, shop);
  if (problem.code === 'stock-trim-too-wide') return placed(shop.locate, { ...problem, path: ['stock', 'trim'] });
  const said = { ...problem, message: `${material.name}: ${problem.message}` };
  if (section === undefined) return { ...said, path: [] };
  const sheet = list === 'sheets' && typeof index === 'number' && index < material.sheets.length ? [index] : [];
  return placed(shop.locate, { ...said, path: [...section, 'sheets', ...sheet] });
}

/** Where the shop's file lists the board; undefined where a job gives it in place. */
export function shopSection({ kind, id }: Material, { shop }: StockShop): readonly string[] | undefined {
  const there = kind === 'board' ? shop.boards.has(id) : shop.backing.has(id);
  return there ? [kind === 'board' ? 'boards' : 'backing', id] : undefined;
}

const placed = (locate: StockShop['locate'], problem: Problem): Problem => locate([problem])[0] ?? problem;

function pieceMessage(problem: Problem, index: number, { input, blanks, jobs, material, units }: Context): string {
  const { sheets, pieces, options = {} } = input;
  const name = `the blank of ${jobName(jobs, blanks[index]!.job)}, ${blanks[index]!.name}, ${showSize(pieces[index]!, units)},`;
  switch (problem.code) {
    case 'stock-piece-too-large': {
      const largest = showSize(largestUsable(sheets, input), units);
      return `${name} is larger than every sheet of ${material.name}; the largest that fits is ${largest}`;
    }
    case 'stock-piece-turned':
      return `${name} fits a sheet of ${material.name} only turned by a quarter, but the board has a direction`;
    case 'stock-cut-too-long':
      return `${name} cannot be cut from a sheet of ${material.name} without a cut longer than ${showLength(options.longestCut!, units)}`;
    case 'stock-edges-trimmed':
      return `${name} needs a factory edge, but every sheet of ${material.name} that holds it is trimmed all round`;
    default:
      return problem.message;
  }
}

function largestUsable(sheets: readonly StockSheet[], { options = {} }: StockInput): Size {
  const usable = sheets
    .filter(({ count }) => count !== 0)
    .map((sheet) => {
      const { left, right, top, bottom } = trimOf(sheet, options);
      return { width: sheet.width - left - right, height: sheet.height - top - bottom };
    });
  return usable.reduce((most, each) => (each.width * each.height > most.width * most.height ? each : most));
}

/** Names pieces in the planner's own messages. */
export const pieceLabel = (jobs: readonly StockJob[], { job, name }: Blank): StockPiece['label'] & string =>
  `${jobName(jobs, job)}, ${name}`;
