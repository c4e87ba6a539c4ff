import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Demand } from '../../src/bench/work/rounds.ts';
import { type Solved, solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';
import { inMm, readSheets } from '../documents/tickets.ts';
import type { ReadPage } from '../readers/pdf-lines.ts';
import { Hand, type Truth } from './bench-hand.ts';
import { type Thing, thingsOn } from './bench-paper.ts';
import { fewest } from './fewest.ts';

const TRUTH: Truth = {
  opening: 'left',
  start: 1.2,
  stop: -0.4,
  overrun: 0.3,
  straightedge: 0,
  guide: { a: 0, b: 1, setAt: 1.4 },
};
const HELD: Truth = { ...TRUTH, straightedge: 38 };

const SHOP = `
units: mm
boards: {bone: {name: Bone, thickness: 1.4}, slate: {name: Slate, thickness: 1.4}, heavy: {name: Heavy, thickness: 3.1}}
heads:
  pull: {bevel: 45, opening: left, start: 1.2, stop: -0.4, overrun: 0.3}
  push: {bevel: 45, opening: left, straightedge: 38, start: 1.2, stop: -0.4, overrun: 0.3}
guide: {graduation: 1/16 in, longest: 16 in, setAt: 1.4}
`;

interface Asked {
  readonly border: number;
  readonly bottom: number;
  readonly kind: 'bone' | 'slate' | 'double' | 'heavy' | 'same' | 'reverse' | 'held';
  readonly count: number;
  readonly wide: number;
}

const LAYERS: Readonly<Record<Asked['kind'], string>> = {
  bone: '{board: bone}',
  held: '{board: bone}',
  slate: '{board: slate}',
  heavy: '{board: heavy}',
  double: '{board: bone}, {board: slate, reveal: 1/4}',
  same: '{board: bone}, {board: bone, reveal: 3/16}',
  reverse: '{board: bone, bevel: {angle: 45, reverse: true}}, {board: slate, reveal: 3/8}',
};

function solved({ border, bottom, kind, count, wide }: Asked, index: number): Solved {
  const text = `title: Tern ${index + 1}
number: A-${index + 1}
count: ${count}
mat: {border: {top: ${border}, sides: ${border}, bottom: ${bottom}}, layers: [${LAYERS[kind]}]}
openings: [{size: ${wide} x ${wide + 2}}]
bench: {head: ${kind === 'held' ? 'push' : 'pull'}, mark: pencil}
`;
  const made = solveJob(text, { file: 'job.yaml', shop: { text: SHOP, file: 'shop.yaml' } });
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}

const asked = fc.record({
  border: fc.constantFrom(2, 2.25, 2.5, 3),
  bottom: fc.constantFrom(2.5, 3, 3.25),
  kind: fc.constantFrom<Asked['kind']>('bone', 'bone', 'slate', 'double', 'double', 'heavy', 'same', 'reverse', 'held'),
  count: fc.constantFrom(1, 1, 2, 6),
  wide: fc.constantFrom(5, 8, 9.5),
});

const startsTicket = ({ texts }: ReadPage): boolean =>
  texts.some(({ text }) => text.startsWith('On the BACK of every blank'));

interface Day {
  readonly run: readonly Thing[];
  readonly hands: readonly Hand[];
}

async function dayOf(jobs: readonly Solved[]): Promise<Day> {
  const { pages } = await readSheets('ticket', jobs);
  const starts = pages.flatMap((page, i) => (startsTicket(page) ? [i] : []));
  const hands = jobs.map((job, k) => {
    const things = thingsOn(pages.slice(starts[k], starts[k + 1]));
    const marks = things.flatMap((thing) => (thing.kind === 'marks' ? thing.rows : []));
    expect(marks).toHaveLength(job.report.strokes.length);
    return new Hand(job.report.bench.head === 'push' ? HELD : TRUTH, job.report, marks);
  });
  return { run: thingsOn(pages.slice(0, starts[0])), hands };
}

/** `A-3 under mat 1 × 6`: whose, and which layer. */
function lotOf(words: string): readonly [job: number, layer: number] {
  const found = /^A-(\d+)(?: (top mat|under mat (\d+)))?(?: × \d+)?$/.exec(words.trim());
  if (found === null) throw new Error(`${JSON.stringify(words)} is no lot`);
  return [Number(found[1]) - 1, Number(found[3] ?? 0)];
}

const STEPS: readonly (readonly [RegExp, (hand: Hand, layer: number) => void])[] = [
  [/its fallout back in place: ([^.]*)\./g, (hand, layer) => hand.slip(layer, 'fallout')],
  [/loose in its opening: ([^.]*)\./g, (hand, layer) => hand.slip(layer, 'waste')],
  [/Fix behind the mat above, as the ticket says: ([^.]*)\./g, (hand, layer) => hand.fix(layer)],
  [/Lift the fallouts out: ([^.]*)\./g, (hand, layer) => hand.liftLoose(layer)],
];

/** Does what the run list says, and nothing else; the times that the guide was set. */
function worked({ run, hands }: Day): number {
  let depths: readonly number[] = [];
  let [settings, last] = [0, ''];
  for (const thing of run) {
    if (thing.kind === 'words') {
      const { text } = thing;
      const both = /depth of ([\d.]+) (in|mm) \(left box\), then all again at ([\d.]+) (in|mm)/.exec(text);
      const one = /, depth ([\d.]+) (in|mm),/.exec(text);
      if (both !== null) depths = [inMm(both[1]!, both[2]!), inMm(both[3]!, both[4]!)];
      else if (one !== null) depths = [inMm(one[1]!, one[2]!)];
      const found = STEPS.flatMap(([pattern, act]) => [...text.matchAll(pattern)].map((match) => ({ match, act })));
      for (const { match, act } of found.sort((a, b) => a.match.index - b.match.index)) {
        for (const name of match[1]!.split(', ')) {
          const [job, layer] = lotOf(name);
          act(hands[job]!, layer);
        }
      }
    } else if (thing.kind === 'reading') {
      const isHeld = thing.strokes.every(({ words }) => words.includes('straightedge'));
      const said = thing.reading?.said ?? 'off';
      if (!isHeld && said !== last) settings++;
      if (!isHeld) last = said;
      for (const depth of depths) {
        for (const stroke of thing.strokes) {
          const [job, layer] = lotOf(stroke.lot!);
          hands[job]!.cut(layer, stroke, thing.reading, depth);
        }
      }
    }
  }
  return settings;
}

const toldSettings = (run: readonly Thing[]): number => {
  const words = run.map((thing) => (thing.kind === 'words' ? thing.text : '')).join(' ');
  return Number(/(\d+) settings? of the guide/.exec(words)![1]);
};

/** Readings within 0.15 mm are one, gathered from the smallest up. */
function gathered(guides: readonly number[]): readonly (readonly number[])[] {
  const groups: number[][] = [];
  for (const guide of [...guides].sort((a, b) => a - b)) {
    const last = groups.at(-1);
    if (last !== undefined && guide - last[0]! <= 0.15) last.push(guide);
    else groups.push([guide]);
  }
  return groups;
}

/** The day as demands on settings, put together from what check says alone. */
function demandsOf(jobs: readonly Solved[]) {
  const lots = jobs.flatMap(({ report }, job) =>
    report.layers.map(({ layer, board }) => ({
      job,
      layer,
      board,
      guides: report.strokes.filter((s) => s.layer === layer).map((s) => s.guide),
    })),
  );
  const boards = [...new Set(lots.map(({ board }) => board))];
  const groups = boards.map((board) => gathered(lots.flatMap((lot) => (lot.board === board ? lot.guides : []))));
  const demands = lots.map(({ job, layer, board, guides }): Demand => {
    const group = boards.indexOf(board);
    const settings = [...new Set(guides.map((guide) => groups[group]!.findIndex((each) => each.includes(guide))))];
    const after = lots.flatMap((other, i) => (other.job === job && other.layer === layer - 1 ? [i] : []));
    return { group, settings, after };
  });
  const reads = (group: number, setting: number): string => {
    const guides = groups[group]![setting]!;
    const middle = (guides[0]! + guides.at(-1)!) / 2;
    const value = Math.round(middle / 1.5875);
    const off = middle - value * 1.5875;
    return `${value} ${Math.abs(off) <= 0.05 ? '' : Math.sign(off)}`;
  };
  return { demands, reads, groups };
}

describe('a run list of a day, doing only what it says', () => {
  test('forty jobs end with their openings as they were solved, each setting once a board', async () => {
    const list = fc.sample(asked, { seed: 14, numRuns: 40 });
    const jobs = list.map(solved);
    const day = await dayOf(jobs);
    const settings = worked(day);
    expect(day.hands.flatMap((hand) => hand.faults())).toEqual([]);
    expect(settings).toBe(toldSettings(day.run));
    // No fewer than one for each reading of each board; boards over themselves need a second round.
    const { groups } = demandsOf(jobs.filter(({ report }) => report.bench.head === 'pull'));
    const least = groups.reduce((sum, { length }) => sum + length, 0);
    expect(settings).toBeGreaterThanOrEqual(least - groups.length);
    expect(settings).toBeLessThanOrEqual(2 * least);
  }, 60_000);

  test('forty jobs whose boards need one round each take one setting for each reading of each board', async () => {
    const kinds: readonly Asked['kind'][] = ['bone', 'double', 'slate', 'heavy'];
    const list = fc.sample(asked, { seed: 15, numRuns: 40 }).map((each, i) => ({ ...each, kind: kinds[i % 4]! }));
    const jobs = list.map(solved);
    const day = await dayOf(jobs);
    const settings = worked(day);
    expect(day.hands.flatMap((hand) => hand.faults())).toEqual([]);
    const { groups } = demandsOf(jobs);
    const least = groups.reduce((sum, { length }) => sum + length, 0);
    expect(settings).toBeLessThanOrEqual(least);
    expect(settings).toBeGreaterThan(least - groups.length);
  }, 60_000);

  test('small days take the fewest settings that there can be', async () => {
    const days = fc.sample(
      fc.array(
        asked.filter(({ kind }) => kind !== 'held' && kind !== 'reverse'),
        { minLength: 2, maxLength: 3 },
      ),
      {
        seed: 16,
        numRuns: 12,
      },
    );
    for (const list of days) {
      const jobs = list.map((each, i) => solved({ ...each, bottom: i === 0 ? each.bottom : each.border }, i));
      const day = await dayOf(jobs);
      const { demands, reads } = demandsOf(jobs);
      expect(worked(day)).toBe(fewest(demands, reads)[1]);
      expect(day.hands.flatMap((hand) => hand.faults())).toEqual([]);
    }
  }, 60_000);

  test('a run list that fixes an under mat before its turn is found out', async () => {
    const jobs = [
      { border: 2, bottom: 3, kind: 'double', count: 1, wide: 8 } as const,
      { border: 2, bottom: 2, kind: 'bone', count: 1, wide: 5 } as const,
    ].map(solved);
    const { run, hands } = await dayOf(jobs);
    const first = run.findIndex(({ kind }) => kind === 'reading');
    const steps = run.findIndex((thing) => thing.kind === 'words' && thing.text.includes('back in place'));
    const early = [...run.slice(0, first), run[steps]!, ...run.slice(first)];
    expect(() => worked({ run: early, hands })).toThrow('not cut through');
  });
});
