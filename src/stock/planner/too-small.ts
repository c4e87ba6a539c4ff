import { error, type Problem } from '../../problems/problem.ts';
import type { Instance } from './instance.ts';
import { Search } from './search/search.ts';
import type { Task } from './task.ts';
import type { Forest } from './trees/forest.ts';

/** The most kinds of pieces that are listed by name. */
const MOST_NAMED = 8;
/** Steps to find out how little more would do. */
const SHORT_SEARCH = 2_000_000;

/**
 * Says which pieces found no place, and which sheets would do beside those that there are. `proved`: no plan exists; else
 * none was found, which more effort might.
 */
export function tooSmall(task: Task, proved: boolean): Problem {
  const { instance } = task;
  const [own, more] = [instance.stocks.length, extraOf(instance)];
  // All that there is comes first, as if it were free; sheets that there are not are saved as far as that goes.
  const there = instance.stocks.map((stock) => ({ ...stock, free: true }));
  const wished = more.map((stock) => ({ ...instance.stocks[stock]!, free: false, limit: Infinity }));
  const search = new Search({ ...instance, stocks: [...there, ...wished] }, 1);
  search.saveFirst(0, search.steps + SHORT_SEARCH);

  const { best } = search;
  const names = namesOf(task, fullest(instance).missing);
  const list = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED), 'others'] : names;
  const verdict = proved ? 'the stock is too small' : 'the stock seems too small';
  const message = `${verdict}: without a place stay ${list.join(', ')}`;
  const sheets = more.flatMap((stock, i) => {
    const [count, supply] = [best.opened[own + i]!, task.supplies[stock]!];
    return count > 0 && supply.kind === 'sheet' ? [`${count} more of ${JSON.stringify(supply.sheet.id)}`] : [];
  });
  const hint = sheets.length === 0 ? 'add sheets that are large enough' : `${sheets.join(' and ')} would do`;
  return error('stock-too-small', ['sheets'], message, proved ? hint : `${hint}; or search longer`);
}

/** A plan for as much of the pieces as a short search finds room for. */
function fullest(instance: Instance): Forest {
  const search = new Search(instance, 1);
  search.placeAll(search.steps + SHORT_SEARCH);
  return search.best;
}

/** What one could have more of: sheets that are bought, or whatever there is where none is. */
function extraOf({ stocks }: Instance): number[] {
  const all = stocks.map((_, s) => s);
  const bought = all.filter((s) => !stocks[s]!.free);
  return bought.length > 0 ? bought : all;
}

function namesOf(task: Task, missing: Int32Array): string[] {
  return task.members.flatMap((pieces, type) => {
    let left = missing[type]!;
    // The pieces of a type are alike: those listed last are the ones without a place.
    return [...pieces].reverse().flatMap((piece) => {
      const count = Math.min(left, piece.count ?? 1);
      left -= count;
      return count > 0 ? [`${count} × ${JSON.stringify(piece.label ?? piece.id)}`] : [];
    });
  });
}
