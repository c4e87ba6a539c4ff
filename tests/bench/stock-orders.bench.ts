import type { StockInput, StockPlan } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { faults } from '../stock/check-plan.ts';
import { orders } from './orders.ts';
import { PACKERS } from './packers.ts';
import { mustBeLaid } from './stock-instances.ts';

export const about =
  'large demands: sheets above the bound, different sheets and time of the stock plan beside packers';
export const light = false;

/** `--only turned|oriented`, `--effort N`, `--seed N`; `--packers` lays every order by other packers too, which takes long. */
export function run(args: readonly string[]): void {
  const option = (name: string): string | undefined => {
    const at = args.indexOf(`--${name}`);
    return at < 0 ? undefined : args[at + 1];
  };
  const only = option('only');
  const options = { effort: Number(option('effort') ?? 1), seed: Number(option('seed') ?? 1) };
  for (const mode of ['turned', 'oriented'] as const) {
    if (only === undefined || only === mode) measure(mode === 'turned', options, args.includes('--packers'));
  }
}

function measure(turn: boolean, options: StockInput['options'], packers: boolean): void {
  console.log(`\n  ${turn ? 'turning allowed' : 'oriented'}`);
  console.log('  order                      blanks  bound  sheets    gap  different   cpu s   others');
  const sums = { sheets: 0, bound: 0, gaps: 0, worst: 0, slowest: 0, others: PACKERS.map(() => 0) };
  const all = orders(turn);
  for (const { name, input } of all) {
    const asked: StockInput = { ...input, ...(options === undefined ? {} : { options }) };
    const start = process.cpuUsage();
    const made = planStock(asked);
    const seconds = process.cpuUsage(start).user / 1e6;
    if (!made.ok) throw new Error(`${name}: ${made.problems[0]?.message}`);
    const plan = made.value;
    const wrong = faults(asked, plan);
    if (wrong.length > 0) throw new Error(`${name}: ${wrong.join(', ')}`);
    const others = packers ? packed(input, turn) : [];
    const gap = plan.count / plan.bound.value - 1;
    sums.sheets += plan.count;
    sums.bound += plan.bound.value;
    sums.gaps += gap;
    sums.worst = Math.max(sums.worst, gap);
    sums.slowest = Math.max(sums.slowest, seconds);
    others.forEach((sheets, i) => {
      sums.others[i]! += sheets;
    });
    const cells = [
      String(plan.laid.length).padStart(6),
      String(plan.bound.value).padStart(5),
      String(plan.count).padStart(6),
      percent(gap).padStart(6),
      String(different(plan)).padStart(9),
      seconds.toFixed(2).padStart(6),
      others.join(' '),
    ];
    console.log(`  ${name.padEnd(25)}  ${cells.join('  ')}`);
  }
  const names = packers ? `; ${PACKERS.map(({ name }, i) => `${name} ${sums.others[i]}`).join(', ')}` : '';
  console.log(
    `  ${sums.sheets} sheets, bound ${sums.bound}${names}\n  above the bound ${percent(sums.gaps / all.length)} on the average, ${percent(sums.worst)} at most; at most ${sums.slowest.toFixed(2)} s`,
  );
  console.log(`  memory of the whole process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB`);
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;

/** Sheets that are cut in different ways. */
function different({ sheets }: StockPlan): number {
  const shown = sheets.map(({ tree }) => JSON.stringify(tree, (key, value: unknown) => (key === 'copy' ? 0 : value)));
  return new Set(shown).size;
}

function packed({ sheets, pieces }: StockInput, turn: boolean): number[] {
  const { width, height } = sheets[0]!;
  const blanks = pieces.flatMap((piece) =>
    Array.from({ length: piece.count ?? 1 }, () => ({ width: piece.width, height: piece.height })),
  );
  const problem = { sheet: { width, height }, blanks, turn };
  return PACKERS.map(({ pack }) => {
    const laid = pack(problem);
    mustBeLaid(problem, laid);
    return laid.length;
  });
}
