/**
 * Says what is wrong with a plan, from the input and the plan alone: it shares no code with the planner. An empty list
 * is a valid plan.
 */
import type { CutNode, LaidPiece, PieceNode, StockInput, StockPlan, UsedSheet } from '../../src/stock/planner/model.ts';

const NOISE = 1e-6;

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

const same = (a: number, b: number): boolean => Math.abs(a - b) <= NOISE;
const equal = (a: Rect, b: Rect): boolean =>
  same(a.x, b.x) && same(a.y, b.y) && same(a.width, b.width) && same(a.height, b.height);

export function faults(input: StockInput, plan: StockPlan): string[] {
  return [
    ...copyFaults(input, plan),
    ...stockFaults(input, plan),
    ...plan.sheets.flatMap((sheet) => sheetFaults(input, plan, sheet)),
    ...falloutFaults(input, plan),
    ...factFaults(plan),
  ];
}

/** Each copy of each piece once, in its own size, turned only where it may. */
function copyFaults(input: StockInput, plan: StockPlan): string[] {
  const out: string[] = [];
  const seen = new Set<string>();
  for (const placed of plan.laid) {
    const piece = input.pieces.find(({ id }) => id === placed.piece);
    const key = `${placed.piece} #${placed.copy}`;
    if (piece === undefined) {
      out.push(`${key} is no piece`);
      continue;
    }
    if (seen.has(key)) out.push(`${key} lies twice`);
    seen.add(key);
    if (placed.copy < 1 || placed.copy > (piece.count ?? 1)) out.push(`${key} is one too many`);
    const [width, height] = placed.turned ? [piece.height, piece.width] : [piece.width, piece.height];
    if (!same(placed.width, width) || !same(placed.height, height)) out.push(`${key} has another size`);
    if (placed.turned && piece.turn === false) out.push(`${key} is turned`);
  }
  const wanted = input.pieces.reduce((sum, piece) => sum + (piece.count ?? 1), 0);
  if (seen.size !== wanted) out.push(`${seen.size} of ${wanted} pieces lie on sheets`);
  return out;
}

/** No more sheets than there are; count and cost are theirs. */
function stockFaults(input: StockInput, plan: StockPlan): string[] {
  const out: string[] = [];
  let [count, cost] = [0, 0];
  for (const sheet of input.sheets) {
    const used = plan.sheets.filter(({ id, origin }) => id === sheet.id && origin.kind !== 'fallout');
    if (used.length > (sheet.count ?? Infinity)) out.push(`${used.length} of ${sheet.id} are used`);
    if (sheet.offcut !== true) count += used.length;
    cost += used.length * (sheet.cost ?? 0);
    for (const each of used) {
      if (each.origin.kind !== (sheet.offcut === true ? 'offcut' : 'sheet'))
        out.push(`${sheet.id} is no ${each.origin.kind}`);
      if (!same(each.width, sheet.width) || !same(each.height, sheet.height)) out.push(`${sheet.id} has another size`);
    }
  }
  if (plan.count !== count) out.push(`the count is ${plan.count} and not ${count}`);
  if (input.sheets.some((sheet) => sheet.cost !== undefined) && !same(plan.cost ?? 0, cost))
    out.push('the cost is wrong');
  plan.sheets.forEach((sheet, i) => {
    if (sheet.number !== i + 1) out.push(`sheet ${i + 1} is numbered ${sheet.number}`);
  });
  return out;
}

function marginsOf(input: StockInput, used: UsedSheet): Margins {
  const sheet = input.sheets.find(({ id }) => id === used.id);
  if (used.origin.kind === 'fallout' || sheet === undefined) return { top: 0, right: 0, bottom: 0, left: 0 };
  const trim = sheet.trim ?? (sheet.offcut === true ? 0 : (input.options?.trim ?? 0));
  if (typeof trim === 'number') return { top: trim, right: trim, bottom: trim, left: trim };
  return { top: 0, right: 0, bottom: 0, left: 0, ...trim };
}

function sheetFaults(input: StockInput, plan: StockPlan, sheet: UsedSheet): string[] {
  const out: string[] = [];
  const kerf = input.options?.kerf ?? 0;
  const placed = plan.laid.filter((each) => each.sheet === sheet.number);
  if (placed.length === 0) out.push(`sheet ${sheet.number} is empty`);
  const margins = marginsOf(input, sheet);
  for (const [i, a] of placed.entries()) {
    const inside =
      a.x >= margins.left - NOISE &&
      a.y >= margins.top - NOISE &&
      a.x + a.width <= sheet.width - margins.right + NOISE &&
      a.y + a.height <= sheet.height - margins.bottom + NOISE;
    if (!inside) out.push(`${a.piece} #${a.copy} lies outside of sheet ${sheet.number} or in its trim`);
    for (const b of placed.slice(i + 1)) {
      if (gap(a, b) < kerf - NOISE) out.push(`${a.piece} #${a.copy} and ${b.piece} #${b.copy} are too close`);
    }
    const piece = input.pieces.find(({ id }) => id === a.piece);
    if (piece?.factoryEdge === true && !onFactoryEdge(a, sheet, margins)) out.push(`${a.piece} has no factory edge`);
  }
  if (!separable(placed, kerf)) out.push(`sheet ${sheet.number} cannot be cut from edge to edge`);
  return [...out, ...treeFaults(input, sheet, placed)];
}

/** The clear distance in the direction in which there is one; negative where the two overlap. */
export function gap(a: Rect, b: Rect): number {
  const across = Math.max(b.x - (a.x + a.width), a.x - (b.x + b.width));
  const down = Math.max(b.y - (a.y + a.height), a.y - (b.y + b.height));
  return Math.max(across, down);
}

function onFactoryEdge(a: Rect, sheet: UsedSheet, margins: Margins): boolean {
  if (sheet.origin.kind !== 'sheet') return false;
  return (
    (margins.left === 0 && same(a.x, 0)) ||
    (margins.top === 0 && same(a.y, 0)) ||
    (margins.right === 0 && same(a.x + a.width, sheet.width)) ||
    (margins.bottom === 0 && same(a.y + a.height, sheet.height))
  );
}

/**
 * True where straight cuts from edge to edge, as wide as the kerf, can part the rectangles, by their places alone. What
 * can be parted at all can be parted after any first cut that parts it, so the first one found will do.
 */
export function separable(rects: readonly Rect[], kerf: number): boolean {
  if (rects.length < 2) return true;
  for (const [start, size] of [
    ['x', 'width'],
    ['y', 'height'],
  ] as const) {
    const sorted = [...rects].sort((a, b) => a[start] - b[start]);
    let reach = -Infinity;
    for (const [i, rect] of sorted.entries()) {
      if (i > 0 && rect[start] >= reach + kerf - NOISE) {
        return separable(sorted.slice(0, i), kerf) && separable(sorted.slice(i), kerf);
      }
      reach = Math.max(reach, rect[start] + rect[size]);
    }
  }
  return false;
}

const sameCopy = (node: PieceNode, placed: LaidPiece): boolean =>
  node.piece === placed.piece && node.copy === placed.copy && node.turned === placed.turned;

/** The tree divides the sheet as it says, ends in the pieces laid, and has no cut that is too long. */
function treeFaults(input: StockInput, sheet: UsedSheet, placed: readonly LaidPiece[]): string[] {
  const out: string[] = [];
  const pieces: PieceNode[] = [];
  const kerf = input.options?.kerf ?? 0;
  const longest = input.options?.longestCut ?? Infinity;
  const walk = (node: CutNode): void => {
    if (node.kind === 'piece') pieces.push(node);
    if (node.kind !== 'cuts') return;
    const [start, size, across] =
      node.along === 'x' ? (['x', 'width', 'height'] as const) : (['y', 'height', 'width'] as const);
    const cross = node.along === 'x' ? 'y' : 'x';
    if (node.parts.length < 2) out.push('a cut has a single part');
    if (node[across] > longest + NOISE) out.push(`a cut is ${node[across]} long`);
    let done = node[start];
    node.parts.forEach((part, i) => {
      // A trim narrower than the kerf leaves no strip: there the blade runs along the edge, partly off the board.
      const overhang = i === 1 && node.parts[0]!.kind === 'trim' && same(node.parts[0]![size], 0);
      if (i > 0 && !overhang && part[start] < done + kerf - NOISE && part[size] > NOISE) out.push('a kerf is missing');
      // A piece may be smaller than its place by what the planner's grid has rounded.
      const loose = part.kind === 'piece' ? 1e-3 : NOISE;
      if (Math.abs(part[cross] - node[cross]) > loose) out.push('a part lies beside its parent');
      if (Math.abs(part[across] - node[across]) > loose) out.push('a part is not as long as the cut beside it');
      done = part[start] + part[size];
    });
    if (done > node[start] + node[size] + NOISE) out.push('parts are larger than their parent');
    if (done < node[start] + node[size] - kerf - 1e-3) out.push('something is left beside the last part');
    node.parts.forEach(walk);
  };
  walk(sheet.tree);
  const { tree } = sheet;
  if (!equal(tree, { x: 0, y: 0, width: sheet.width, height: sheet.height })) {
    if (tree.kind !== 'piece' || tree.width > sheet.width + NOISE) out.push('the tree is not the sheet');
  }
  if (
    pieces.length !== placed.length ||
    !placed.every((each) => pieces.some((piece) => sameCopy(piece, each) && equal(piece, each)))
  ) {
    out.push('tree and pieces differ');
  }
  return out;
}

/** A fallout comes after the sheet that its mat lies on, is used once, and only on request. */
function falloutFaults(input: StockInput, plan: StockPlan): string[] {
  const out: string[] = [];
  const used = new Set<string>();
  for (const sheet of plan.sheets) {
    const { origin } = sheet;
    if (origin.kind !== 'fallout') continue;
    const key = `${origin.piece} #${origin.copy} ${origin.which}`;
    if (input.options?.fallouts !== true) out.push('a fallout is used unasked');
    if (used.has(key)) out.push(`the fallout of ${key} is used twice`);
    used.add(key);
    const mat = plan.laid.find(({ piece, copy }) => piece === origin.piece && copy === origin.copy);
    const fallout = input.pieces.find(({ id }) => id === origin.piece)?.fallouts?.[origin.which];
    if (mat === undefined || mat.sheet >= sheet.number) out.push(`the fallout of ${key} is used before its mat is cut`);
    if (fallout === undefined || !same(fallout.width, sheet.width) || !same(fallout.height, sheet.height)) {
      out.push(`${key} has no such fallout`);
    }
  }
  return out;
}

function factFaults(plan: StockPlan): string[] {
  const out: string[] = [];
  const takes = plan.first === 'cost' ? plan.cost! - (plan.credit ?? 0) : plan.count;
  if (plan.bound.value > takes + NOISE) out.push('the bound is above the plan');
  if ((plan.status === 'optimal') !== same(plan.bound.value, takes)) out.push('the status contradicts the bound');
  if (!same(plan.gap, Math.max(0, takes - plan.bound.value))) out.push('the gap is wrong');
  if (plan.other !== undefined) {
    if (plan.first === plan.other.first) out.push('the other plan is by the same rule');
    if (plan.first === 'sheets' && plan.other.count < plan.count) out.push('the other plan is better');
    if (plan.first === 'cost' && plan.credit === undefined && plan.other.cost < plan.cost! - NOISE) {
      out.push('the other plan is better');
    }
  }
  const { used, pieces, offcuts, waste } = plan.area;
  if (Math.abs(used - pieces - offcuts - waste) > 1e-6 * used) out.push('the areas do not add up');
  const area = (rects: readonly Rect[]): number => rects.reduce((sum, { width, height }) => sum + width * height, 0);
  if (
    Math.abs(area(plan.sheets.map((sheet) => ({ x: 0, y: 0, width: sheet.width, height: sheet.height }))) - used) >
    1e-6 * used
  ) {
    out.push('the area used is wrong');
  }
  if (Math.abs(area(plan.laid) - pieces) > 1e-6 * used) out.push('the area of the pieces is wrong');
  return out;
}
