import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import { type Board, boardKey, SHEET } from '../shop/board.ts';
import type { StockSettings } from '../shop/stock.ts';
import { boardMaterial } from './blanks.ts';
import { planStock } from './planner/plan.ts';
import { priceOfSheet } from './sheet-price.ts';

/** As long a search as a quote is worth: a few dozen blanks in a tenth of a second. */
const EFFORT = 0.1;

/**
 * What the sheets cost that this job alone would begin, for one piece and each of its layers: by the same trim, kerf and
 * cuts from edge to edge as a day's plan, but without the shelf and what is left of each size, so that a quote is the same
 * on every day. Layers of one board share its sheets by their area. Undefined where the board has no price, or where a
 * blank fits none of its sheets.
 */
export function sheetsAlone(mat: Mat, job: Job, stock: StockSettings): readonly (number | undefined)[] {
  const whole = new Map<string, number | undefined>();
  const areas = new Map<string, number>();
  for (const { board, blank } of mat.layers) {
    const key = boardKey(board);
    areas.set(key, (areas.get(key) ?? 0) + area(blank));
    if (whole.has(key)) continue;
    const blanks = mat.layers.filter((layer) => boardKey(layer.board) === key).map((layer) => layer.blank);
    whole.set(key, costAlone(board, blanks, job.count, stock));
  }
  return mat.layers.map(({ board, blank }) => {
    const cost = whole.get(boardKey(board));
    return cost === undefined ? undefined : (cost / job.count) * (area(blank) / areas.get(boardKey(board))!);
  });
}

const area = ({ width, height }: Size): number => width * height;

function costAlone(board: Board, blanks: readonly Size[], count: number, stock: StockSettings): number | undefined {
  const material = boardMaterial(board);
  const sizes = board.sheets.length > 0 ? board.sheets : [SHEET];
  const sheets = sizes.flatMap((size, i) => {
    const cost = priceOfSheet(size, material);
    return cost === undefined ? [] : [{ id: `${i}`, width: size.width, height: size.height, cost }];
  });
  if (sheets.length === 0) return undefined;
  const { kerf, trim, longestCut, factoryEdge } = stock;
  const planned = planStock({
    sheets,
    pieces: blanks.map(({ width, height }, i) => ({
      id: `${i}`,
      width,
      height,
      count,
      turn: !board.directional,
      factoryEdge,
    })),
    options: { kerf, trim, first: 'cost', effort: EFFORT, ...defined({ longestCut }) },
  });
  return planned.ok ? planned.value.cost : undefined;
}
