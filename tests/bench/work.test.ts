import { describe, expect, test } from 'vitest';
import type { CutStep, OrderOfWork, WorkStep } from '../../src/bench/work/model.ts';
import { orderOfWork } from '../../src/index.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';
import { SAMPLES, solvedSample } from '../documents/tickets.ts';

const SHOP = `
units: in
boards:
  bone: {name: Bone, thickness: 1.4 mm}
  slate: {name: Slate, thickness: 1.4 mm}
  heavy: {name: Heavy, thickness: 3 mm}
heads:
  pull: {bevel: 45, start: 1.2 mm, stop: -0.4 mm}
  push: {bevel: 45, opening: right, straightedge: 1 1/2 in, start: 1 mm, stop: 1 mm}
guide: {graduation: 1/16 in, longest: 20 in, setAt: 1.4 mm}
`;

function solved(text: string) {
  const found = solveJob(text, { file: 'job.yaml', shop: { text: SHOP, file: 'shop.yaml' } });
  if (!found.ok) throw new Error(found.problems.map(showProblem).join('\n'));
  return found.value;
}

const job = (more: {
  layers: string;
  border: number;
  count?: number;
  head?: string;
  number?: string;
  stack?: string;
}) =>
  solved(`title: Tern ${more.number ?? ''}
${more.number === undefined ? '' : `number: ${more.number}`}
count: ${more.count ?? 1}
mat: {border: ${more.border}, layers: [${more.layers}]}
openings: [{size: 8 x 10}]
bench: {head: ${more.head ?? 'pull'}, stack: ${more.stack ?? 'together'}}
`);

function workOf(...jobs: ReturnType<typeof solved>[]): OrderOfWork {
  const made = orderOfWork(jobs);
  if (!made.ok) throw new Error('no order of work');
  return made.value;
}

const cuts = ({ steps }: OrderOfWork): readonly CutStep[] =>
  steps.flatMap((step) => (step.kind === 'cut' ? [step] : []));
const kinds = ({ steps }: OrderOfWork): readonly WorkStep['kind'][] => steps.map(({ kind }) => kind);

describe.each(SAMPLES)('the order of work of $name', (sample) => {
  const one = solvedSample(sample);
  const done = workOf(one);

  test('has every stroke once for each piece and pass, in the order of its numbers', () => {
    const { count } = one.job;
    for (const [i, lot] of done.lots.entries()) {
      const source = lot.work === 'groove' ? one.grooves : one.strokes.filter(({ layer }) => layer === lot.layer);
      for (const [pass, depth] of lot.depths.entries()) {
        for (let piece = 1; piece <= count; piece++) {
          const own = cuts(done).filter((cut) => cut.lot === i && cut.piece === piece && cut.pass === pass + 1);
          const orders = own.map(({ stroke }) => stroke);
          expect([...orders].sort((a, b) => a - b)).toEqual(source.map(({ order }) => order).sort((a, b) => a - b));
          expect(own.every((cut) => cut.depth === depth)).toBe(true);
        }
      }
    }
  });

  test('sets head, depth and guide before the cut that needs them, and turns the board as it lies', () => {
    let [head, depth, guide, facing] = ['', 0, '', 0];
    for (const step of done.steps) {
      if (step.kind === 'head') head = step.head.id;
      if (step.kind === 'depth') depth = step.depth;
      if (step.kind === 'guide') guide = step.setting.text;
      if (step.kind === 'guide-off') guide = 'off';
      if (step.kind !== 'cut') continue;
      const lot = done.lots[step.lot]!;
      expect([head, depth]).toEqual([lot.head.id, step.depth]);
      if (!lot.head.handHeld) expect(guide).toBe(step.setting?.text ?? 'off');
      facing = ((((step.laidOn ? 0 : facing) + step.turn) % 4) + 4) % 4;
      const [dx, dy] = [step.stop.x - step.start.x, step.stop.y - step.start.y];
      // Turned so far, the travel runs down towards the person.
      const angle = (facing * Math.PI) / 2;
      expect(-dx * Math.sin(-angle) + dy * Math.cos(-angle)).toBeGreaterThan(0.999 * Math.hypot(dx, dy) - 0.01);
    }
  });

  test('is plain data', () => {
    expect(JSON.parse(JSON.stringify(done))).toEqual(done);
  });
});

describe('the order of work', () => {
  test('of a double mat together: top mat, fallout back, under mat fixed, marked, cut, both fallouts out', () => {
    const done = workOf(job({ layers: '{board: bone}, {board: slate, reveal: 1/4}', border: 3 }));
    expect(kinds(done).filter((kind, i, all) => kind !== all[i - 1])).toEqual([
      'head',
      'marks',
      'depth',
      'guide',
      'cut',
      'slip',
      'fix',
      'marks',
      'guide',
      'cut',
      'lift',
    ]);
    expect(done.steps).toContainEqual({ kind: 'slip', lot: 1, of: 'fallout', thickness: 1.4 });
    expect(done.steps.at(-1)).toEqual({ kind: 'lift', lot: 1, layers: [1, 2] });
    expect(done.settings).toBe(2);
  });

  test('over a reverse bevel: its fallout is lifted by itself and waste board lies under the under mat', () => {
    const done = workOf(
      job({ layers: '{board: bone, bevel: {angle: 45, reverse: true}}, {board: slate, reveal: 1/4}', border: 3 }),
    );
    const said = kinds(done).filter((kind, i, all) => kind !== all[i - 1]);
    expect(said).toEqual([
      'head',
      'marks',
      'depth',
      'guide',
      'cut',
      'guide',
      'cut',
      'corners',
      'lift',
      'slip',
      'fix',
      'marks',
      'guide',
      'cut',
      'lift',
    ]);
    expect(done.steps).toContainEqual({ kind: 'slip', lot: 1, of: 'waste', thickness: 1.4 });
    expect(done.steps.at(-1)).toEqual({ kind: 'lift', lot: 1, layers: [2] });
    expect(cuts(done)[0]).toMatchObject({ far: true });
    expect(cuts(done)[0]!.edge).not.toBe(cuts(done)[0]!.side);
  });

  test('of six pieces: all six before the guide moves', () => {
    const done = workOf(
      solved(
        '{count: 6, mat: {outer: 16 x 20, layers: [{board: bone}]}, openings: [{size: 8 x 10}], bench: {head: pull}}',
      ),
    );
    expect(done.settings).toBe(2);
    const runs = cuts(done).map(({ setting, piece }) => `${setting!.text} ${piece}`);
    expect(runs.filter((run, i) => run !== runs[i - 1])).toEqual(
      ['4 in', '5 in'].flatMap((text) => [1, 2, 3, 4, 5, 6].map((piece) => `${text} ${piece}`)),
    );
    expect(cuts(done).filter(({ laidOn }) => laidOn)).toHaveLength(12);
  });

  test('of a thick board: at each setting all sides at half depth and then at the whole', () => {
    const done = workOf(
      solved('{mat: {outer: 16 x 20, layers: [{board: heavy}]}, openings: [{size: 8 x 10}], bench: {head: pull}}'),
    );
    const said = done.steps.flatMap((step): readonly (string | number)[] =>
      step.kind === 'depth'
        ? [step.depth]
        : step.kind === 'guide'
          ? [step.setting.text]
          : step.kind === 'cut'
            ? ['cut']
            : [],
    );
    const both = [1.5, 'cut', 'cut', 3, 'cut', 'cut'];
    expect(said).toEqual([said[0], ...both, said[7], ...both]);
    expect(said[0]).not.toBe(said[7]);
  });

  test('of a day: a setting once a board for all jobs, rising; thick boards and hand-held heads apart', () => {
    const bone = (border: number, number: string, more = {}) =>
      job({ layers: '{board: bone}', border, number, ...more });
    const done = workOf(
      bone(3, 'A1', { head: 'push' }),
      job({ layers: '{board: heavy}', border: 2, number: 'A2' }),
      bone(3.5, 'A3'),
      bone(2, 'A4', { count: 2 }),
      job({ layers: '{board: bone}, {board: slate, reveal: 1/2}', border: 3, number: 'A5' }),
      bone(3.5, 'A6'),
    );
    const rows = done.steps.flatMap((step) =>
      step.kind === 'guide'
        ? [step.setting.text]
        : step.kind === 'cut'
          ? [`${done.lots[step.lot]!.number} ${step.piece}`]
          : [],
    );
    expect(rows.filter((row, i) => row !== rows[i - 1])).toEqual(
      ['2 in', 'A4 1', 'A4 2', '3 in', 'A5 1', '3 1/2 in', 'A3 1', 'A6 1', 'A5 1', '2 in scant', 'A2 1', 'A1 1'].map(
        (row) => (row === '2 in scant' ? expect.stringMatching(/^[12]/) : row),
      ),
    );
    expect(done.settings).toBe(4);
  });

  test('a blank out of a fallout waits for the mat that it drops out of', () => {
    const [first, second] = [job({ layers: '{board: bone}', border: 2 }), job({ layers: '{board: bone}', border: 3 })];
    const made = orderOfWork([first, second], [{ job: 0, layer: 1, after: { job: 1, layers: [1] } }]);
    if (!made.ok) throw new Error('no order of work');
    expect(made.value.lots[0]!.after).toEqual([1]);
    expect(cuts(made.value).map(({ lot }) => lot)).toEqual([1, 1, 1, 1, 0, 0, 0, 0]);
  });
});
