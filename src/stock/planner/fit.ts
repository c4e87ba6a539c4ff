import { error, type Problem } from '../../problems/problem.ts';
import type { Grid } from './grid.ts';
import type { BlankType, Stock } from './instance.ts';
import type { StockPiece } from './model.ts';

/** True where the blank, in one of the ways it may lie, can be cut from an empty sheet of the stock. */
export function canLie(stock: Stock, type: BlankType, longest: number): boolean {
  if (type.edge && stock.edgesX + stock.edgesY === 0) return false;
  if (cuttable(stock, type.width, type.height, longest)) return true;
  return type.turn && cuttable(stock, type.height, type.width, longest);
}

function cuttable(stock: Stock, width: number, height: number, longest: number): boolean {
  const [dx, dy] = [stock.width - width, stock.height - height];
  if (dx < 0 || dy < 0) return false;
  if (dx === 0 && dy === 0) return stock.whole;
  const xFirst = (dx === 0 || stock.height <= longest) && (dy === 0 || width <= longest);
  const yFirst = (dy === 0 || stock.width <= longest) && (dx === 0 || height <= longest);
  return xFirst || yFirst;
}

interface Measures {
  readonly grid: Grid;
  readonly kerf: number;
  readonly longest: number;
}

const shown = (length: number): string => String(Number(length.toFixed(3)));

/** What keeps a piece from every stock, or undefined where some stock can hold it. */
export function unfit(
  piece: StockPiece,
  path: Problem['path'],
  type: BlankType,
  stocks: readonly { readonly stock: Stock; readonly supply: NamedSupply }[],
  { grid, kerf, longest }: Measures,
): Problem | undefined {
  const all = stocks.map(({ stock }) => stock);
  if (all.some((stock) => canLie(stock, type, longest))) return undefined;
  const name = `${JSON.stringify(piece.label ?? piece.id)}, ${shown(piece.width)} × ${shown(piece.height)},`;
  const some = (changed: Partial<BlankType>, limit: number): boolean =>
    all.some((stock) => canLie({ ...stock, whole: stock.whole || limit === Infinity }, { ...type, ...changed }, limit));
  if (some({ edge: false }, longest)) {
    const message = `${name} needs a factory edge, but every sheet that holds it is trimmed all round`;
    return error(
      'stock-edges-trimmed',
      path,
      message,
      'leave one side of the sheets untrimmed, or do without the edge',
    );
  }
  if (some({ edge: false }, Infinity)) {
    const message = `${name} cannot be cut from a sheet without a cut longer than ${shown(grid.length(longest - kerf))}`;
    return error('stock-cut-too-long', path, message, 'cut it elsewhere, or raise the longest cut');
  }
  if (!type.turn && some({ edge: false, turn: true }, Infinity)) {
    const message = `${name} fits a sheet only turned by a quarter, but may not turn`;
    return error('stock-piece-turned', path, message, 'let it turn, or get a larger sheet');
  }
  const largest = stocks
    .filter(({ supply }) => supply.kind !== 'fallout')
    .sort((a, b) => b.stock.width * b.stock.height - a.stock.width * a.stock.height)[0]!;
  const [width, height] = [largest.stock.width, largest.stock.height].map((side) => shown(grid.length(side - kerf)));
  const message = `${name} is larger than every sheet; the largest piece that fits is ${width} × ${height}`;
  return error('stock-piece-too-large', path, message, 'make it smaller, or get a larger sheet');
}

interface NamedSupply {
  readonly kind: 'sheet' | 'offcut' | 'fallout';
}
