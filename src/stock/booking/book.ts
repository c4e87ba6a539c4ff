import type { Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../../problems/problem.ts';
import type { Written } from '../../read/document.ts';
import { type Edit, editShop } from '../../shop/edit-shop.ts';
import { readShop, shopLocator } from '../../shop/read-shop.ts';
import type { Shop } from '../../shop/shop.ts';
import { showSize } from '../../units/print.ts';
import type { NewOffcut, OpenedSheets, PlanNote, StockChange, UsedOffcut } from './plan-note.ts';
import { written } from './planned.ts';

/** The shop's text with a plan booked in it, or taken back, and what that changed. */
export interface Booked {
  readonly shopText: string;
  readonly change: StockChange;
}

/** Sizes are written as fractions or to a hundredth and read again. */
const WRITTEN = 0.05;
const sameSize = (a: Size, b: Size): boolean =>
  Math.abs(a.width - b.width) < WRITTEN && Math.abs(a.height - b.height) < WRITTEN;

/**
 * The shop's text as it is once exactly this plan is cut: fewer sheets where they are counted, what was used off the
 * shelf, what is kept onto it. Comments stay; one of an offcut that is gone says of which it spoke. A mark that
 * another offcut has got since is exchanged, with a warning. Errors: `booking-offcut-gone`, `booking-sheet-gone`, `booking-sheets-few`,
 * `shop-not-editable`, those of reading the shop.
 */
export function bookPlan(source: Written, { number, change }: PlanNote, date: string): Result<Booked> {
  const read = readShop(source);
  if (!read.ok) return read;
  const shop = read.value;
  const problems: Problem[] = [];
  const edits: Edit[] = [];
  const sheets = change.sheets.flatMap((opened): readonly OpenedSheets[] => {
    const found = sheetOf(opened, shop, problems);
    if (found?.left === undefined) return [];
    if (found.left < opened.count) {
      const message = `plan ${number} takes ${opened.count} sheets of ${opened.board}, ${showSize(opened, shop.units)}, and only ${found.left} are counted`;
      problems.push(error('booking-sheets-few', found.path, message, 'put the count right, then book the plan'));
    }
    edits.push({ kind: 'set', path: found.path, values: { count: found.left - opened.count } });
    return [{ ...opened, index: found.index }];
  });
  const places = change.used.flatMap((offcut) => {
    const at = shop.shelf.findIndex((each) => isSame(each, offcut));
    if (at >= 0) return [at];
    const message = `plan ${number} cuts up ${offcut.id}, ${showSize(offcut, shop.units)} of ${offcut.board}, and that is not on the shelf`;
    problems.push(
      error('booking-offcut-gone', ['shelf'], message, 'put it back on the list if it was cut by this plan'),
    );
    return [];
  });
  if (problems.length > 0) return fail(shopLocator(source.text, source.file)(problems));
  const { kept, warnings } = marked(change.kept, shop);
  for (const offcut of kept) {
    const { id, board, from } = offcut;
    const value = { id, board, size: written(offcut, shop), note: `from ${from}, ${date}` };
    edits.push({ kind: 'append', path: ['shelf'], value });
  }
  // What is new goes to the end, and what is gone goes from there on: so the places before stay what they are.
  for (const at of places.sort((a, b) => b - a)) {
    const remark = `${shop.shelf[at]!.id}, cut up ${date}`;
    edits.push({ kind: 'remove', path: ['shelf'], at, remark });
  }
  const used = change.used.map((offcut): UsedOffcut => {
    const note = shop.shelf.find(({ id }) => id === offcut.id)?.note;
    const { id, board, width, height } = offcut;
    return { id, board, width, height, ...defined({ note }) };
  });
  return edited(source, edits, { sheets, used, kept }, warnings);
}

/**
 * The shop's text without what booking a plan changed in it. Errors: `booking-gone-on`, where something has become of
 * it since; `booking-sheet-gone`, `shop-not-editable`, those of reading the shop.
 */
export function takeBack(source: Written, number: string, change: StockChange): Result<Booked> {
  const read = readShop(source);
  if (!read.ok) return read;
  const shop = read.value;
  const problems: Problem[] = [];
  const goneOn = (message: string): void => {
    const hint = 'take back what was booked after it first, or put the shelf right by hand';
    problems.push(error('booking-gone-on', ['shelf'], message, hint));
  };
  const edits: Edit[] = change.sheets.flatMap((opened): readonly Edit[] => {
    const found = sheetOf(opened, shop, problems);
    if (found?.left === undefined) return [];
    return [{ kind: 'set', path: found.path, values: { count: found.left + opened.count } }];
  });
  const places = change.kept.flatMap((offcut) => {
    const at = shop.shelf.findIndex((each) => isSame(each, offcut));
    if (at < 0) goneOn(`plan ${number} put ${offcut.id} onto the shelf, and it is not there any more`);
    return at < 0 ? [] : [at];
  });
  for (const { id } of change.used)
    if (shop.shelf.some((each) => each.id === id))
      goneOn(`plan ${number} took ${id} off the shelf, and there is another of that mark now`);
  if (problems.length > 0) return fail(shopLocator(source.text, source.file)(problems));
  for (const offcut of change.used) {
    const { id, board, note } = offcut;
    edits.push({
      kind: 'append',
      path: ['shelf'],
      value: { id, board, size: written(offcut, shop), ...defined({ note }) },
    });
  }
  for (const at of places.sort((a, b) => b - a)) edits.push({ kind: 'remove', path: ['shelf'], at });
  return edited(source, edits, change, []);
}

function edited(source: Written, edits: readonly Edit[], change: StockChange, warnings: readonly Problem[]) {
  const made = editShop(source.text, source.file, edits);
  if (!made.ok) return made;
  const again = readShop({ text: made.value, file: source.file });
  return again.ok ? succeed({ shopText: made.value, change }, warnings) : fail(again.problems);
}

const isSame = (a: UsedOffcut | NewOffcut, b: UsedOffcut | NewOffcut): boolean =>
  a.id === b.id && a.board === b.board && sameSize(a, b);

/** A board's size of sheet where it stands in the list, or wherever it stands now; with how many are left. */
function sheetOf({ kind, board, index, ...size }: OpenedSheets, shop: Shop, problems: Problem[]) {
  const [section, known] = kind === 'board' ? (['boards', shop.boards] as const) : (['backing', shop.backing] as const);
  const listed = known.get(board)?.sheets ?? [];
  const here = listed[index];
  const at = here !== undefined && sameSize(here, size) ? index : listed.findIndex((each) => sameSize(each, size));
  const found = listed[at];
  if (found === undefined) {
    const path = known.has(board) ? [section, board] : [section];
    const message = `the plan takes sheets of ${board}, ${showSize(size, shop.units)}, and the shop lists none of that size any more`;
    problems.push(error('booking-sheet-gone', path, message, 'list that size again, then book the plan'));
    return undefined;
  }
  return { path: [section, board, 'sheets', at], index: at, ...defined({ left: found.count }) };
}

/** Marks that are free: where another offcut has one by now, the next in the count. */
function marked(kept: readonly NewOffcut[], { shelf }: Shop) {
  const taken = new Set(shelf.map(({ id }) => id));
  const wished = [...taken, ...kept.map(({ id }) => id)];
  let last = Math.max(0, ...wished.map((id) => Number(/^S(\d{1,9})$/.exec(id)?.[1] ?? 0)));
  const warnings: Problem[] = [];
  const all = kept.map((offcut): NewOffcut => {
    if (!taken.has(offcut.id)) return offcut;
    last += 1;
    const message = `another offcut on the shelf is called ${offcut.id} by now, so the one from ${offcut.from} becomes S${last}`;
    warnings.push(warning('booking-mark-taken', ['shelf'], message, `write S${last} on it`));
    return { ...offcut, id: `S${last}` };
  });
  return { kept: all, warnings };
}
