import type { LayoutRecord } from '../../documents/stock/record.ts';
import { type StopGroup, sheetsName } from '../../documents/stock/words.ts';
import { prepare } from '../../outputs/prepare.ts';
import { defined } from '../../problems/defined.ts';
import type { Asks, StockSheet, StockSheets, Told } from './answers.ts';
import { solvedOf } from './solved.ts';

/** The sheets of board of some pieces, as the stock plan has them: the same cuts, in the same order, in the same words. */
export async function stockSheets({ jobs, shop }: Asks['sheets']['request']): Promise<Told<StockSheets>> {
  const solved = await solvedOf(jobs);
  if (!solved.ok) return { ok: false, problems: solved.problems };
  const prepared = await prepare('stock', { jobs: solved.value, ...defined({ shop: jobs[0]?.shop ?? shop }) });
  if (!prepared.ok) return { ok: false, problems: prepared.problems };
  const { record } = prepared.value.drawn;
  const laid = record.boards.flatMap(({ name, layouts }) => layouts.map((layout) => ({ name, layout })));
  const sheets = laid
    .sort((a, b) => a.layout.numbers[0]! - b.layout.numbers[0]!)
    .map(({ name, layout }) => sheetOf(name, layout));
  // A plan without a shop has no number: it is known by what is cut.
  const plan = record.plan?.number ?? JSON.stringify(sheets);
  return { ok: true, value: { plan, sheets }, problems: [...solved.warnings, ...prepared.warnings] };
}

function sheetOf(board: string, layout: LayoutRecord): StockSheet {
  const { numbers, width, height, pieces, offcuts, stops, instructions } = layout;
  const lines = new Map(instructions.flatMap((step) => (step.kind === 'cut' ? [[step.cut, step.line] as const] : [])));
  return {
    name: sheetsName(layout),
    board,
    count: numbers.length,
    width,
    height,
    pieces: pieces.map(({ key, title, name, x, y, width: w, height: h }) => {
      return { key, words: `${title}, ${name}`, x, y, width: w, height: h };
    }),
    offcuts: offcuts.map(({ marks, x, y, width: w, height: h }) => {
      return { words: marks.join(', '), x, y, width: w, height: h };
    }),
    stops: stops.map((group) => ({
      words: stopWords(group),
      cuts: group.rows.map(({ cut, lay, gives }) => ({ cut, words: `${lay} → ${gives}`, ...lines.get(cut)! })),
    })),
  };
}

/** `Stop 16 1/8 in`, and what it truly is where the tape cannot show it. */
function stopWords({ reading, byRule }: StopGroup): string {
  const { text, unit, sense, decimal } = reading;
  const exact = sense === 'exact' ? '' : ` ${sense}, ${decimal} ${unit}`;
  return `${byRule ? 'Mark by rule' : 'Stop'} ${text} ${unit}${exact}`;
}
