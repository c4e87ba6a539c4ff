import { describe, expect, test } from 'vitest';
import type { Report } from '../../src/index.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';
import { inMm, readSheets } from '../documents/tickets.ts';
import { Hand, type Truth } from './bench-hand.ts';
import { type MarkRow, type Thing, thingsOn } from './bench-paper.ts';

const PULL: Truth = {
  opening: 'left',
  start: 1.2,
  stop: -0.4,
  overrun: 0.3,
  straightedge: 0,
  guide: { a: 0.6, b: 1.002, setAt: 1.4 },
};
const PUSH: Truth = { ...PULL, opening: 'right', start: 2.3, stop: 1.1, straightedge: 38 };

const SHOP = `
units: mm
boards: {bone: {name: Bone, thickness: 1.4}, slate: {name: Slate, thickness: 1.5}, heavy: {name: Heavy, thickness: 3.1}}
heads:
  pull: {bevel: 45, opening: left, start: 1.2, stop: -0.4, overrun: 0.3, pin: true}
  push: {bevel: 45, opening: right, straightedge: 38, start: 2.3, stop: 1.1, overrun: 0.3}
guide: {graduation: 1/16 in, longest: 450, setAt: 1.4, a: 0.6, b: 1.002}
`;

/** Ten jobs of the kinds that a bench has, marked out by pencil. */
const JOBS: readonly (readonly [name: string, truth: Truth, text: string])[] = [
  [
    'a single mat in inches',
    PULL,
    'mat: {outer: 16 x 20, layers: [{board: bone}]}\nopenings: [{artwork: 10 1/3 x 13 1/2, overlap: 1/4}]',
  ],
  [
    'a double together',
    PULL,
    'mat: {outer: 16 x 20, weighting: {add: 1/2}, layers: [{board: bone}, {board: slate, reveal: 1/4}]}\nopenings: [{artwork: 10 1/2 x 13 1/2}]',
  ],
  [
    'a triple together, in millimetres',
    PULL,
    'units: mm\nmat: {outer: 411 x 503, layers: [{board: bone}, {board: slate, reveal: 7}, {board: bone, reveal: 6}]}\nopenings: [{artwork: 240 x 301}]',
  ],
  [
    'a double apart',
    PULL,
    'units: mm\nmat: {border: {top: 61, right: 47, bottom: 89, left: 33}, layers: [{board: bone}, {board: slate, reveal: 8}]}\nopenings: [{size: 180 x 240}]\nbench: {stack: apart}',
  ],
  [
    'a reverse bevel',
    PULL,
    'units: mm\nmat: {border: {top: 60, right: 50, bottom: 70, left: 40}, layers: [{board: bone, bevel: {angle: 45, reverse: true}}]}\nopenings: [{size: 210 x 260}]',
  ],
  [
    'an under mat over a reverse bevel',
    PULL,
    'units: mm\nmat: {border: {top: 60, sides: 50, bottom: 70}, layers: [{board: bone, bevel: {angle: 45, reverse: true}}, {board: slate, reveal: 9}]}\nopenings: [{size: 210 x 260}]',
  ],
  [
    'a thick board, six times',
    PULL,
    'count: 6\nmat: {outer: 14 x 18, layers: [{board: heavy}]}\nopenings: [{artwork: 9 x 12}]',
  ],
  [
    'four in a grid, thick below',
    PULL,
    'mat: {border: {top: 3, right: 2, bottom: 3 1/4, left: 2 1/2}, layers: [{board: bone}, {board: heavy, reveal: 3/8}]}\nopenings: [{name: spring, size: 5 x 7}, {name: summer, size: 5 x 7}, {name: autumn, size: 5 x 7}, {name: winter, size: 5 x 7}]\narrange: {columns: 2, gap: 1 1/2}',
  ],
  [
    'a hand-held head along a straightedge',
    PUSH,
    'mat: {outer: 20 x 24, layers: [{board: bone}]}\nopenings: [{artwork: 12 x 15}]\nbench: {head: push}',
  ],
  [
    'borders past the guide, in a row',
    PULL,
    'units: cm\nmat: {border: {top: 6, sides: 5.2, bottom: 7.1}, layers: [{board: bone}]}\nopenings: [{name: first, size: 20 x 12}, {name: second, size: 22 x 12}]\narrange: {gap: 3}',
  ],
];

const textOf = (text: string): string =>
  text.includes('bench:') ? text.replace('bench: {', 'bench: {mark: pencil, ') : `${text}\nbench: {mark: pencil}`;
const headed = (text: string): string =>
  textOf(text).replace(/bench: \{mark: pencil(?!.*head:)/, 'bench: {head: pull, mark: pencil');

function solved(text: string) {
  const made = solveJob(headed(text), { file: 'job.yaml', shop: { text: SHOP, file: 'shop.yaml' } });
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made.value;
}

/** The depths that words tell, mm: one, or two for a thick board. */
function depthsIn(text: string): readonly number[] | undefined {
  const both = /depth of ([\d.]+) (in|mm|cm) \(left box\), then all again at ([\d.]+) (in|mm|cm)/.exec(text);
  if (both !== null) return [inMm(both[1]!, both[2]!), inMm(both[3]!, both[4]!)];
  const one = /Blade depth ([\d.]+) (in|mm|cm)/.exec(text);
  return one === null ? undefined : [inMm(one[1]!, one[2]!)];
}

/** Does what the ticket says and nothing else. */
function worked(things: readonly Thing[], truth: Truth, report: Report): Hand {
  const marks: readonly MarkRow[] = things.flatMap((thing) => (thing.kind === 'marks' ? thing.rows : []));
  const hand = new Hand(truth, report, marks);
  let [layer, depths]: [number, readonly number[]] = [-1, []];
  for (const thing of things) {
    switch (thing.kind) {
      case 'heading':
        if (/^(?:Cut|Fix and cut) (?:top|under) mat/.test(thing.text)) layer = hand.layerOf(thing.text);
        break;
      case 'words': {
        depths = depthsIn(thing.text) ?? depths;
        if (/fallout back in place/.test(thing.text)) hand.slip(layer, 'fallout');
        if (/lay waste board of/.test(thing.text)) hand.slip(layer, 'waste');
        if (/Fix under mat/.test(thing.text)) hand.fix(layer);
        if (/Lift (?:the|both|all) fallouts?|Push the fallouts? out/.test(thing.text)) hand.liftLoose(layer);
        break;
      }
      case 'marks':
        break;
      case 'reading': {
        // Said once below a reading, for all of its strokes.
        const far = thing.strokes.some(({ words }) => words.includes('FAR edge on the guide')) ? ' FAR' : '';
        const strokes = thing.strokes.map((stroke) => ({ ...stroke, words: `${stroke.words}${far}` }));
        for (const depth of depths) for (const stroke of strokes) hand.cut(layer, stroke, thing.reading, depth);
        break;
      }
      default: {
        const never: never = thing;
        throw new TypeError(`unknown thing ${JSON.stringify(never)}`);
      }
    }
  }
  return hand;
}

describe('a ticket worked from alone, doing only what it says', () => {
  test.each(JOBS)('%s ends with the openings as they were solved, within 0.4 mm', async (_, truth, text) => {
    const job = solved(text);
    const { pages } = await readSheets('ticket', [job]);
    const things = thingsOn(pages);
    const marked = things.flatMap((thing) => (thing.kind === 'marks' ? thing.rows : []));
    expect(marked).toHaveLength(job.report.strokes.length);
    expect(worked(things, truth, job.report).faults()).toEqual([]);
  });

  test('a ticket that sets the depth too late, or lifts a fallout too soon, is found out', async () => {
    const job = solved(JOBS[1]![2]);
    const { pages } = await readSheets('ticket', [job]);
    const things = thingsOn(pages);
    const late = things.map(
      (thing): Thing =>
        thing.kind === 'words'
          ? { ...thing, text: thing.text.replace(/Blade depth [\d.]+/, 'Blade depth 0.03') }
          : thing,
    );
    expect(() => worked(late, PULL, job.report)).toThrow('not cut through');
    const last = things.findLastIndex(({ kind }) => kind === 'reading');
    expect(() =>
      worked(
        things.filter((_, i) => i !== last),
        PULL,
        job.report,
      ),
    ).toThrow('not cut through');
    const shifted = things.map(
      (thing): Thing =>
        thing.kind === 'reading' ? { ...thing, reading: { ...thing.reading!, mm: thing.reading!.mm + 0.6 } } : thing,
    );
    expect(worked(shifted, PULL, job.report).faults().length).toBeGreaterThan(3);
  });
});
