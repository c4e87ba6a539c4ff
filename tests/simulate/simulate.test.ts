import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import type { P } from '../cutfiles/points.ts';
import { backFaults, beamFaults, curveFaults, type Faults, faceFaults, leavesBoard, lineFaults } from './compare.ts';
import { corners, extent, type Figure, fromBehind, length, minus, moved, shifted } from './figure.ts';
import { cot, type Head, head, type Wanted, wanted } from './jobs.ts';
import { ALLOWED, type Bed, beds, bevelHead, dragged, type Format, knife, laser, tilted } from './machines.ts';
import { chords, patterns, type Straightedge, shopOf, worked } from './pattern.ts';

/** `SIMULATED=500 npx vitest … tests/simulate`: so many jobs for each way of cutting. */
const RUNS = Number(process.env.SIMULATED ?? 12);
const TIMEOUT = 60_000 + 3_000 * RUNS;

const tally: Record<string, number> = {};
const count = (what: string, by = 1): void => {
  tally[what] = (tally[what] ?? 0) + by;
};
afterAll(() => {
  if (process.env.SIMULATED !== undefined) process.stdout.write(`${JSON.stringify(tally)}\n`);
});

const setbackOf = ({ layers }: Wanted, k: number): number =>
  (layers[k]!.reverse ? -1 : 1) * layers[k]!.thickness * cot(layers[k]!.angle);

/** So many made by chance, from the one seed; what is found wrong with any is told with its job. */
async function all<T>(
  made: fc.Arbitrary<T>,
  runs: number,
  faultsOf: (one: T) => Promise<Found>,
): Promise<readonly Found[]> {
  const found: Found[] = [];
  for (const one of fc.sample(made, runs)) {
    const faults = await faultsOf(one);
    if (faults.faults.length > 0) found.push(faults);
  }
  return found;
}

interface Found {
  readonly job: string;
  readonly by: string;
  readonly faults: Faults;
}

/** Nearly all that is made up must be cut: a check that refuses everything proves nothing. */
const mostly = (what: string): void => {
  expect(tally[what] ?? 0, `${what} of ${RUNS}`).toBeGreaterThan(0.85 * RUNS);
};

async function checkPattern(job: Wanted, own: Head, edge?: Straightedge): Promise<Faults> {
  const sheets = await patterns(job, shopOf(own, edge));
  if (sheets === undefined) return [];
  const what = edge === undefined ? 'pull head' : 'straightedge';
  count(what);
  return sheets.flatMap((sheet, k): Faults => {
    const layer = job.layers[k]!;
    const { cuts, read, unread, faults } = worked(sheet, layer, job.paper, own, edge);
    count(`${what}: strokes`, cuts.length);
    count('letters read', read);
    count('letters without room', unread);
    const behind = (figure: Figure): Figure => fromBehind(figure, job.width);
    const faces = job.openings.map((each) => ({ face: behind(each[k]!.face), setback: setbackOf(job, k) }));
    const backs = job.openings.map((each) => behind(each[k]!.back));
    const lifted = job.openings.map((each) => behind(each[k]!.lifted));
    const curved = sheet.curves.filter(({ dash }) => dash.length === 0).flatMap((curve) => chords(curve));
    count(`${what}: curves`, curved.length > 0 ? 1 : 0);
    // At a corner the back of a reverse bevel lies a setback out, by the tangent of half of the turn.
    const hangs = (turn: number): number =>
      layer.reverse ? layer.thickness * cot(layer.angle) * Math.tan(turn / 2) - own.overrun : 0;
    const trimmed = (p: P): P => ({ x: p.x - (k === 0 ? 0 : job.trimBack), y: p.y - (k === 0 ? 0 : job.trimBack) });
    const blank = k === 0 ? job : { width: job.width - 2 * job.trimBack, height: job.height - 2 * job.trimBack };
    return [
      ...faults,
      ...faceFaults(faces, cuts, own.overrun),
      ...backFaults(backs, cuts, hangs),
      ...curveFaults(lifted, curved),
      ...leavesBoard(
        cuts.flatMap(({ face, back }) => [face.from, face.to, back.from, back.to].map(trimmed)),
        blank,
      ),
    ].map((fault) => `layer ${k + 1}: ${fault}`);
  });
}

/** The blank that a bed holds is the job's, and where its openings lie in it. */
function laid(job: Wanted, bed: Bed): { readonly faults: Faults; readonly by: P } {
  const by = bed.layer === 1 ? 0 : job.trimBack;
  const off = Math.max(Math.abs(bed.width - (job.width - 2 * by)), Math.abs(bed.height - (job.height - 2 * by)));
  return { faults: off < 1e-6 ? [] : ['the blank has another size'], by: { x: -by, y: -by } };
}

const outlineOf = ({ width, height }: Pick<Bed, 'width' | 'height'>): Figure => {
  const [a, b, c, d] = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ] as const;
  return {
    kind: 'pieces',
    pieces: [
      { kind: 'line', from: a, to: b },
      { kind: 'line', from: b, to: c },
      { kind: 'line', from: c, to: d },
      { kind: 'line', from: d, to: a },
    ],
  };
};

/** The ways that lie within an opening, by their middles. */
function within<T extends { readonly points: readonly P[] }>(ways: readonly T[], figure: Figure): readonly T[] {
  const { left, right, top, bottom } = extent(moved(figure, 2));
  return ways.filter(({ points }) => points.every(({ x, y }) => x > left && x < right && y > top && y < bottom));
}

describe.runIf(RUNS > 0)('a board that is cut as its papers and files say', () => {
  it('by a pull head that follows the pattern has the faces, backs and corners of the job', {
    timeout: TIMEOUT,
  }, async () => {
    const found = await all(fc.tuple(wanted, head), RUNS, async ([job, own]) => ({
      job: job.text,
      by: shopOf(own),
      faults: await checkPattern(job, own),
    }));
    expect(found).toEqual([]);
    mostly('pull head');
    expect(tally['pull head: strokes']).toBeGreaterThan(5 * RUNS);
    expect(tally['pull head: curves']).toBeGreaterThan(0.1 * RUNS);
    expect(tally['letters read']).toBeGreaterThan(2 * RUNS);
  });

  it('by hand, along a straightedge that is laid on its line', { timeout: TIMEOUT }, async () => {
    const edges = fc.record({
      offset: fc.constantFrom(28, 32.5),
      on: fc.constantFrom('border' as const, 'opening' as const),
    });
    const found = await all(fc.tuple(wanted, head, edges), Math.ceil(RUNS / 2), async ([job, own, edge]) => ({
      job: job.text,
      by: shopOf(own, edge),
      faults: await checkPattern(job, own, edge),
    }));
    expect(found).toEqual([]);
    expect(tally.straightedge).toBeGreaterThan(0.4 * RUNS);
  });

  it('by a laser, whose beam eats its kerf and leaves its tabs', { timeout: TIMEOUT }, async () => {
    const found = await all(fc.tuple(wanted, laser, fc.boolean()), RUNS, async ([job, machine, turn]) => {
      const made = await beds(job, machine, { turn });
      if (made === undefined) return { job: job.text, by: machine.words, faults: [] };
      count('laser');
      const faults = made.flatMap((bed): Faults => {
        // The beam stays as it is when the board is turned under it.
        const kerf = bed.turned ? { x: machine.kerf.y, y: machine.kerf.x } : machine.kerf;
        const swept = { kerf, allowed: ALLOWED[machine.format] };
        const { faults: wrong, by } = laid(job, bed);
        const inner = bed.ways.filter(({ operation }) => operation === 'inner');
        const holes = job.openings.flatMap((each): Faults => {
          const face = shifted(each[bed.layer - 1]!.face, by);
          const ways = within(inner, face);
          count('laser: ways', ways.length);
          const tabs = machine.tabs === undefined ? [] : tabFaults(ways, machine.tabs, machine.kerf, swept.allowed);
          return [...beamFaults(face, { ways, ...swept }, 'inside', machine.tabs !== undefined), ...tabs];
        });
        const ways = bed.ways.filter(({ operation }) => operation === 'outer');
        const outside = ways.length === 0 ? [] : beamFaults(outlineOf(bed), { ways, ...swept }, 'outside', false);
        if (machine.outside !== ways.length > 0) return ['the outside is not cut as it was wished'];
        return [...wrong, ...holes, ...outside];
      });
      return { job: job.text, by: machine.words, faults };
    });
    expect(found).toEqual([]);
    mostly('laser');
    expect(tally['laser: ways']).toBeGreaterThan(RUNS);
  });

  it('by a knife that trails its axis, let down whichever way it points', { timeout: TIMEOUT }, async () => {
    const found = await all(fc.tuple(wanted, knife), RUNS, async ([job, machine]) => {
      const made = await beds(job, machine);
      if (made === undefined) return { job: job.text, by: machine.words, faults: [] };
      count('knife');
      const check = { allowed: ALLOWED[machine.format], past: 0, hangs: 0 };
      const faults = made.flatMap((bed): Faults => {
        const { faults: wrong, by } = laid(job, bed);
        const inner = bed.ways.filter(({ operation }) => operation === 'inner');
        const cut = (axis: readonly P[]): P[] => dragged(axis, machine.offset, machine.towards);
        const holes = job.openings.flatMap((each): Faults => {
          const face = shifted(each[bed.layer - 1]!.face, by);
          const ways = within(inner, face);
          count('knife: ways', ways.length);
          return lineFaults(
            face,
            ways.map(({ points }) => cut(points)),
            'inside',
            check,
          );
        });
        const outer = bed.ways.filter(({ operation }) => operation === 'outer');
        const outside =
          outer.length === 0
            ? []
            : lineFaults(
                outlineOf(bed),
                outer.map(({ points }) => cut(points)),
                'outside',
                check,
              );
        return [...wrong, ...holes, ...outside];
      });
      return { job: job.text, by: machine.words, faults };
    });
    expect(found).toEqual([]);
    mostly('knife');
  });

  it('by a head that tilts its blade, back up and face up', { timeout: TIMEOUT }, async () => {
    const heads = fc.record({
      own: head,
      format: fc.constantFrom<Format>('svg', 'dxf', 'hpgl'),
      up: fc.constantFrom('back' as const, 'face' as const),
    });
    const found = await all(fc.tuple(wanted, heads), RUNS, async ([job, { own, format, up }]) => {
      const machine = bevelHead(own, format, up);
      const made = await beds(job, machine);
      if (made === undefined) return { job: job.text, by: machine.words, faults: [] };
      count('bevel head');
      const faults = made.flatMap((bed): Faults => {
        const { faults: wrong, by } = laid(job, bed);
        const { thickness, angle, reverse } = job.layers[bed.layer - 1]!;
        const [tilt] = bed.tilts;
        if (tilt === undefined || bed.tilts.length !== 1 || Math.abs(tilt.angle - angle) > 1e-9)
          return ['the blade has another angle than its layer'];
        return [
          ...wrong,
          ...job.openings.flatMap((each): Faults => {
            const { face, back } = each[bed.layer - 1]!;
            const [own1, own2] = [shifted(face, by), shifted(back, by)];
            const ways = within(bed.ways, moved(own1, 8));
            count('bevel head: ways', ways.length);
            const blades = ways.map((way) =>
              tilted(
                way.closed ? [...way.points, way.points[0]!] : way.points,
                own,
                tilt,
                thickness,
                bed.up === 'back',
              ),
            );
            const [faces, backs] =
              bed.up === 'back'
                ? [blades.map((b) => b.down), blades.map((b) => b.up)]
                : [blades.map((b) => b.up), blades.map((b) => b.down)];
            const allowed = ALLOWED[format];
            const setback = thickness * cot(angle);
            // What it cuts before its head moves, or after, but for what it runs past the corner, or all round past itself.
            const ends = corners(own1).length === 0 ? 2 : 1;
            const straight = Math.max(0, Math.max(-own.start, own.stop) - ends * own.overrun);
            // A reverse bevel's back corners are freed by hand; and what runs past them there lies in the mat's own bevel.
            return [
              ...lineFaults(own1, faces, 'inside', { allowed, past: own.overrun, hangs: 0, straight }).map(
                (f) => `face: ${f}`,
              ),
              ...lineFaults(own2, backs, 'inside', {
                allowed,
                past: own.overrun + (reverse ? 0 : 3 * setback),
                hangs: reverse ? 4 * setback : 0,
                straight,
              }).map((f) => `back: ${f}`),
            ];
          }),
        ];
      });
      return { job: job.text, by: machine.words, faults };
    });
    expect(found).toEqual([]);
    mostly('bevel head');
  });
});

/** Tabs are what stands between one way and the next: their gap, less what the beam eats from both ends. */
function tabFaults(
  ways: readonly { readonly points: readonly P[] }[],
  wished: number,
  kerf: P,
  allowed: number,
): Faults {
  if (ways.length !== 4) return [`${ways.length} ways leave ${ways.length} tabs of 4`];
  return ways.flatMap(({ points }): Faults => {
    const end = points.at(-1)!;
    const next = Math.min(
      ...ways.map((other) => length(minus(other.points[0]!, end))),
      ...ways.filter((other) => other.points !== points).map((other) => length(minus(other.points.at(-1)!, end))),
    );
    const left = next - Math.max(kerf.x, kerf.y);
    return Math.abs(left - wished) > allowed + 0.01 ? [`a tab is ${left.toFixed(3)} wide, ${wished} was wished`] : [];
  });
}
