import { error, type Problem } from '../problems/problem.ts';
import { word } from '../problems/quoted.ts';
import { defined } from '../read/fields/defined.ts';
import { lookUp } from '../read/fields/look-up.ts';
import type { Units } from '../units/units.ts';
import type { SheetSize } from './board.ts';
import * as defaults from './defaults.ts';
import type { ShopInput } from './shop-schema.ts';
import type { ShelfOffcut, StockSettings } from './stock.ts';

type SheetInput = NonNullable<NonNullable<ShopInput['boards']>[string]['sheets']>[number];

export const sheetFrom = ({ size, price, count }: SheetInput): SheetSize => ({ ...size, ...defined({ price, count }) });

/** What sheets are listed for: boards, then backings. */
function materials({ boards = {}, backing = {} }: ShopInput): ReadonlyMap<string, unknown> {
  return new Map<string, unknown>([...Object.entries(backing), ...Object.entries(boards)]);
}

export function shelfFrom(input: ShopInput, problems: Problem[]): readonly ShelfOffcut[] {
  const known = materials(input);
  const seen = new Set<string>();
  return (input.shelf ?? []).map(({ id, board, size, note }, i) => {
    lookUp('board', board, known, ['shelf', i, 'board'], problems);
    if (seen.has(id)) {
      const message = `two offcuts on the shelf are called ${word(id)}`;
      problems.push(error('shelf-id-twice', ['shelf', i, 'id'], message, 'write another mark on one of them'));
    }
    seen.add(id);
    return { id, board, ...size, ...defined({ note }) };
  });
}

export function stockFrom(input: ShopInput, units: Units, problems: Problem[]): StockSettings {
  const given = input.stock ?? {};
  const usual = defaults.stock(units);
  lookUp('board', given.backing, new Map(Object.entries(input.boards ?? {})), ['stock', 'backing'], problems);
  return {
    trim: { ...usual.trim, ...given.trim },
    kerf: given.kerf ?? usual.kerf,
    leastOffcut: given.leastOffcut ?? usual.leastOffcut,
    factoryEdge: given.factoryEdge ?? usual.factoryEdge,
    falloutMargin: given.falloutMargin ?? usual.falloutMargin,
    ...defined({ longestCut: given.longestCut, backing: given.backing }),
  };
}
