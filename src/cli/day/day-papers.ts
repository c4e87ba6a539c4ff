import { BENCH, type BenchOutput } from '../../day/papers/bench.ts';
import type { Paper } from '../../day/papers/paper.ts';
import { defined } from '../../problems/defined.ts';
import { type Problem, warning } from '../../problems/problem.ts';
import { printOf } from '../files/made.ts';
import { Bundles, type Patterns } from './bundles.ts';
import type { DayJob } from './day-job.ts';
import type { DayManifest, DayPaper } from './day-manifest.ts';
import type { How } from './how.ts';
import { areAsMade, type Found, hashOfAll } from './made.ts';
import { type JobDone, textOf } from './make-jobs.ts';
import type { JobState } from './state.ts';
import type { JobText, Tasks } from './tasks.ts';

/** Tickets and labels of more jobs are several files, each with the list of its run in front. */
const MOST_IN_A_RUN = 100;
/** More is no day's cutting; their boards are planned by themselves. */
const MOST_PLANNED = 1000;

/** What the bench gets for some of the jobs together. */
interface BenchPaper {
  readonly output: BenchOutput;
  readonly name: string;
  readonly states: readonly JobState[];
}

/** What an earlier run has left for all jobs together. */
export type Before = (Found & { readonly manifest: DayManifest }) | undefined;

/** Makes what is for all jobs together, each file as soon as what it is made of is known. */
export class DayPapers {
  readonly #how: How;
  readonly #before: Before;
  readonly #jobs: readonly DayJob[];
  readonly #bundles: Bundles;
  readonly #states = new Map<number, JobState>();
  readonly #papers: Promise<readonly DayPaper[]>[] = [];
  readonly #problems: Problem[] = [];
  #second: (several: boolean) => void = () => undefined;
  readonly #several = new Promise<boolean>((resolve) => {
    this.#second = resolve;
  });
  #count = 0;
  #turn: Promise<unknown> = Promise.resolve();
  #plan: Promise<Tasks['bench']['answer']> | undefined;

  constructor(how: How, before: Before, jobs: readonly DayJob[]) {
    this.#how = how;
    this.#before = before;
    this.#jobs = jobs;
    this.#bundles = new Bundles((bundle) => this.#patterns(bundle));
  }

  add(at: number, { state, packed }: JobDone): void {
    if (state !== undefined) this.#states.set(at, state);
    if (state?.now === true) this.#planAhead();
    const any = state !== undefined && state.patterns > 0;
    this.#bundles.add(at, any ? { at, pages: state.patterns, key: state.key, ...defined({ packed }) } : undefined);
  }

  /** All jobs are known: makes the rest, and waits for all. In the order in which they are listed. */
  async finish(): Promise<{ readonly papers: readonly DayPaper[]; readonly problems: readonly Problem[] }> {
    this.#bundles.close();
    this.#second(false);
    const states = [...this.#states.values()].sort((a, b) => a.at - b.at);
    const bench: BenchPaper[] = [];
    const runs = Math.ceil(states.length / MOST_IN_A_RUN);
    for (let run = 0; run < runs; run++) {
      const jobs = states.slice(run * MOST_IN_A_RUN, (run + 1) * MOST_IN_A_RUN);
      const end = runs === 1 ? '' : `-${run + 1}`;
      const tickets = jobs.filter(({ indexed }) => indexed.files.includes('ticket.pdf'));
      if (tickets.length > 0) bench.push({ output: 'ticket', name: `${BENCH.ticket}${end}`, states: tickets });
      bench.push({ output: 'labels', name: `${BENCH.labels}${end}`, states: jobs });
    }
    const unplanned = whyUnplanned(states.map(({ job }) => job));
    if (unplanned !== undefined) this.#problems.push(unplanned);
    else if (states.length > 0) bench.push({ output: 'stock', name: BENCH.stock, states });
    const papers = (await Promise.all([...this.#papers, ...this.#bench(bench)])).flat();
    return { papers, problems: this.#problems };
  }

  /**
   * A plan of the boards takes a while and needs no more than the jobs: once it is clear that something has changed it is made
   * while the jobs are. It is of use where none of them fails.
   */
  #planAhead(): void {
    if (this.#how.crew.hands === 1 || this.#plan !== undefined || whyUnplanned(this.#jobs) !== undefined) return;
    this.#plan = this.#ask([{ output: 'stock', name: BENCH.stock }], this.#jobs.map(textOf));
    // Whoever waits for it hears of it.
    this.#plan.catch(() => undefined);
  }

  #patterns(bundle: readonly Patterns[]): void {
    const place = this.#count;
    this.#count += 1;
    if (place === 1) this.#second(true);
    this.#papers.push(
      (async () => {
        const end = (await this.#several) ? `-${place + 1}` : '';
        const states = bundle.map(({ at }) => this.#states.get(at)!);
        const key = this.#key('patterns', states);
        return this.#paper(`patterns${end}`, key, states, () => this.#joined(`patterns${end}`, bundle));
      })(),
    );
  }

  async #joined(name: string, bundle: readonly Patterns[]): Promise<readonly Paper[]> {
    const { crew, options } = this.#how;
    const packed: Uint8Array[] = [];
    for (const { at, packed: own } of bundle) {
      const { job } = this.#states.get(at)!;
      const pages = own ?? (await crew.run('pages', { job: textOf(job, at), options })).value;
      if (pages !== undefined) packed.push(pages);
    }
    return (await crew.run('patterns', { name, packed })).value ?? [];
  }

  /** In the order in which they are listed. What is of the same jobs is one task, since they are solved for it; a plan of stock takes a thread by itself. */
  #bench(papers: readonly BenchPaper[]): readonly Promise<readonly DayPaper[]>[] {
    const { crew } = this.#how;
    const wanted = papers.filter(
      ({ output, name, states }) => this.#kept(name, this.#key(output, states)).length === 0,
    );
    const tasks = new Map<string, BenchPaper[]>();
    for (const paper of wanted) {
      const apart = crew.hands > 1 && paper.output === 'stock' ? 'stock' : 'sheets';
      const key = [apart, ...paper.states.map(({ at }) => at)].join(' ');
      tasks.set(key, [...(tasks.get(key) ?? []), paper]);
    }
    const make = new Map<BenchPaper, () => Promise<readonly Paper[]>>();
    for (const own of tasks.values()) {
      let run: Promise<readonly (readonly Paper[])[]> | undefined;
      let left = own.length;
      for (const [i, paper] of own.entries())
        make.set(paper, async () => {
          run ??= this.#task(own);
          const made = (await run)[i] ?? [];
          left -= 1;
          // Once all are taken nobody holds them: of a day of thousands only what is being written is in memory.
          if (left === 0) run = undefined;
          return made;
        });
    }
    return papers.map((paper) => {
      const { output, name, states } = paper;
      return this.#paper(name, this.#key(output, states), states, async () => (await make.get(paper)?.()) ?? []);
    });
  }

  async #task(papers: readonly BenchPaper[]): Promise<readonly (readonly Paper[])[]> {
    const [{ output: first, states }] = papers as readonly [BenchPaper, ...BenchPaper[]];
    const ahead = first === 'stock' && states.length === this.#jobs.length ? this.#plan : undefined;
    const asked = papers.map(({ output, name }) => ({ output, name }));
    const { value, problems } = await (ahead ??
      this.#ask(
        asked,
        states.map(({ job, at }) => textOf(job, at)),
      ));
    // Nobody asked for it by itself: what it lacks is told and stops nothing.
    if (value === undefined || value.some((each) => each.length === 0)) this.#problems.push(...problems.map(asWarning));
    return value ?? [];
  }

  #ask(papers: Tasks['bench']['task']['papers'], jobs: readonly JobText[]): Promise<Tasks['bench']['answer']> {
    const { crew, options } = this.#how;
    return crew.run('bench', { papers, jobs, options });
  }

  #key(kind: string, states: readonly JobState[]): string {
    return hashOfAll([kind, ...states.map(({ key, at }) => [key, at])]);
  }

  /** The files that an earlier run has made of the same, else made anew and written. */
  async #paper(
    name: string,
    key: string,
    states: readonly JobState[],
    make: () => Promise<readonly Paper[]>,
  ): Promise<readonly DayPaper[]> {
    const kept = this.#kept(name, key);
    if (kept.length > 0) return kept;
    if (this.#how.stopped()) return [];
    const papers = await make();
    const folder = this.#how.out!;
    if (papers.length > 0) await this.#inTurn(() => this.#how.writer.some({ folder, files: papers }));
    const jobs = states.map(({ folder: own }) => own);
    return papers.map((paper) => ({ print: printOf(paper), pages: paper.pages, name, key, jobs }));
  }

  #kept(name: string, key: string): readonly DayPaper[] {
    const { out, force, verify } = this.#how;
    if (force || this.#before === undefined || out === undefined) return [];
    const { manifest, made, atMs } = this.#before;
    const same = manifest.papers.filter((paper) => paper.name === name && paper.of === key);
    const papers = same.flatMap(({ file, pages, jobs }): readonly DayPaper[] => {
      const print = made.outputs.find((each) => each.name === file);
      return print === undefined ? [] : [{ print, pages, name, key, jobs: jobs.map((job) => `${out}/${job}`) }];
    });
    const prints = papers.map(({ print }) => print);
    return papers.length === same.length && areAsMade(prints, out, atMs, verify) ? papers : [];
  }

  /** Into one folder one after the other. */
  #inTurn(write: () => Promise<void>): Promise<void> {
    const turn = this.#turn.then(write, write);
    this.#turn = turn.catch(() => undefined);
    return turn;
  }
}

function whyUnplanned(jobs: readonly DayJob[]): Problem | undefined {
  const shops = new Set(jobs.map(({ shop }) => shop?.file));
  const why =
    shops.size > 1
      ? 'the jobs are of several shops, whose boards are not planned together'
      : jobs.length > MOST_PLANNED
        ? `there are ${jobs.length} jobs, more than the ${MOST_PLANNED} that are planned together`
        : undefined;
  if (why === undefined) return undefined;
  const hint = 'plan their boards with matwright stock';
  return { ...warning('day-stock', [], `left out: ${why}`, hint), file: 'stock.pdf' };
}

const asWarning = (problem: Problem): Problem => ({ ...problem, severity: 'warning' });
