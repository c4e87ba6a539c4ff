import { planStock } from '../../src/stock/planner/plan.ts';
import { faults } from '../stock/check-plan.ts';
import { PACKERS } from './packers.ts';
import { randomSource } from './random.ts';
import { cuttable, inputOf, mustBeLaid, problemOf, readInstances, type StockInstance } from './stock-instances.ts';

export const about =
  'sheets, bounds and time of the stock plan beside other packers (--instances FILE), and its growth';
export const light = false;

/** Blanks of the made-up days for the growth of time. */
const DAYS = [20, 50, 100, 200, 500, 1000, 2000, 5000];

interface Tally {
  sheets: number;
  /** Instances with as many sheets as the best known plan. */
  best: number;
  cuttable: number;
  seconds: number;
  slowest: number;
}

const nothing = (): Tally => ({ sheets: 0, best: 0, cuttable: 0, seconds: 0, slowest: 0 });

/**
 * `--instances FILE`: every instance with and without turning, or only one of these (`--only turned|oriented`);
 * `--effort N`, `--seed N` for the planner; `--each` prints a line an instance. Without a file, only the growth of time.
 */
export function run(args: readonly string[]): void {
  const option = (name: string): string | undefined => {
    const at = args.indexOf(`--${name}`);
    return at < 0 ? undefined : args[at + 1];
  };
  const [file, only] = [option('instances'), option('only')];
  const options = { effort: Number(option('effort') ?? 1), seed: Number(option('seed') ?? 1) };
  if (file === undefined) {
    growth(options);
    return;
  }
  const instances = readInstances(file);
  for (const mode of ['turned', 'oriented'] as const) {
    if (only !== undefined && only !== mode) continue;
    compare(instances, mode === 'turned', options, args.includes('--each'));
  }
}

interface Options {
  readonly effort: number;
  readonly seed: number;
}

/** Seconds of the processor, which other work on the machine lengthens less than those of the clock. */
function timed<T>(make: () => T): { readonly made: T; readonly seconds: number } {
  const start = process.cpuUsage();
  const made = make();
  return { made, seconds: process.cpuUsage(start).user / 1e6 };
}

function compare(instances: readonly StockInstance[], turn: boolean, options: Options, each: boolean): void {
  const known = (instance: StockInstance) => (turn ? instance.rotated : instance.oriented);
  const ours = { ...nothing(), bound: 0, optimal: 0 };
  const others = PACKERS.map((packer) => ({ packer, tally: nothing() }));
  for (const instance of instances) {
    const input = inputOf(instance, turn, options);
    const { made, seconds } = timed(() => planStock(input));
    if (!made.ok) throw new Error(`${instance.id}: ${made.problems[0]?.message}`);
    const plan = made.value;
    const wrong = faults(input, plan);
    if (wrong.length > 0) throw new Error(`${instance.id}: ${wrong.join(', ')}`);
    const { lb, ub } = known(instance);
    if (plan.bound.value > ub) throw new Error(`${instance.id}: a bound of ${plan.bound.value} above the known ${ub}`);
    const laid = plan.sheets.map(({ number }) => plan.laid.filter(({ sheet }) => sheet === number));
    add(ours, laid, ub, seconds);
    if (plan.bound.value >= lb) ours.bound++;
    if (plan.status === 'optimal') ours.optimal++;
    if (each || plan.count !== ub || plan.bound.value < lb) {
      const gaps = `${plan.count} sheets (known ${ub}), bound ${plan.bound.value} (known ${lb})`;
      console.log(`  ${instance.id.padEnd(18)} ${gaps}  ${seconds.toFixed(2)} s`);
    }
    const problem = problemOf(instance, turn);
    for (const { packer, tally } of others) {
      const other = timed(() => packer.pack(problem));
      mustBeLaid(problem, other.made);
      add(tally, other.made, ub, other.seconds);
    }
  }
  const best = instances.reduce((sum, instance) => sum + known(instance).ub, 0);
  console.log(`\n  ${instances.length} instances, ${turn ? 'turning allowed' : 'oriented'}; best known ${best} sheets`);
  console.log('                      sheets  at best known  edge to edge     cpu s   slowest s');
  for (const { packer, tally } of others) line(packer.name, tally, instances.length);
  line('matwright', ours, instances.length);
  console.log(
    `  bound as good as the best known ${ours.bound}, proved optimal ${ours.optimal} of ${instances.length}\n`,
  );
}

function add(tally: Tally, sheets: Parameters<typeof cuttable>[0], best: number, seconds: number): void {
  tally.sheets += sheets.length;
  if (sheets.length <= best) tally.best++;
  tally.cuttable += cuttable(sheets);
  tally.seconds += seconds;
  tally.slowest = Math.max(tally.slowest, seconds);
}

function line(name: string, { sheets, best, cuttable: cut, seconds, slowest }: Tally, all: number): void {
  const share = `${((100 * cut) / sheets).toFixed(0)} %`;
  const cells = [
    String(sheets).padStart(6),
    `${best} of ${all}`.padStart(13),
    share.padStart(12),
    seconds.toFixed(1).padStart(8),
    slowest.toFixed(2).padStart(10),
  ];
  console.log(`  ${name.padEnd(18)}  ${cells.join('  ')}`);
}

/** Blanks as a print room has them: outer sizes in sixteenths of an inch, from sheets of 32 × 40 in with a kerf. */
function growth(options: Options): void {
  console.log('   blanks  sheets  bound      cpu s   MiB so far');
  for (const blanks of DAYS) {
    const random = randomSource(blanks);
    const inches = (least: number, most: number): number => (Math.round(random.between(least, most) * 16) / 16) * 25.4;
    const pieces = Array.from({ length: blanks }, (_, i) => ({
      id: String(i),
      width: inches(5, 20),
      height: inches(7, 24),
    }));
    const input = {
      sheets: [{ id: 'board', width: 812.8, height: 1016 }],
      pieces,
      options: { kerf: 1.5, trim: 3, ...options },
    };
    const { made, seconds } = timed(() => planStock(input));
    if (!made.ok) throw new Error(made.problems[0]?.message);
    const { count, bound } = made.value;
    console.log(
      `  ${String(blanks).padStart(7)}  ${String(count).padStart(6)}  ${String(bound.value).padStart(5)}  ${seconds.toFixed(2).padStart(9)}  ${(process.resourceUsage().maxRSS / 1024).toFixed(0).padStart(10)}`,
    );
  }
}
