import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';

const JOB = 'mat: {outer: 16 x 20}\nopenings: [{size: 10 x 14}]\n';
const PULL = 'pull: {bevel: 60, opening: right, start: 1.2 mm, stop: -0.4 mm}';
const ONE = `heads: {${PULL}}\n`;
const TWO = `heads: {${PULL}, push: {bevel: 45}}\n`;

function solved(head: string | undefined, shop: string, layers = '') {
  const bench = head === undefined ? '' : `bench: {head: ${head}}\n`;
  const made = solveJob(`${JOB.replace('20}', `20${layers}}`)}${bench}`, { shop: { text: shop, file: 'shop.yaml' } });
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  return made;
}

/** What the strokes are cut with: its name, whether its ends were measured, and the bevel of the layer. */
function cutWith(head: string | undefined, shop: string) {
  const { report } = solved(head, shop).value;
  return [report.bench.head, report.bench.calibrated, report.layers[0]!.bevel.angle];
}

describe('the head that cuts a job', () => {
  it('is the one that is named, else the only one of the shop, else none', () => {
    expect(cutWith('push', TWO)).toEqual(['push', false, 45]);
    expect(cutWith('pull', TWO)).toEqual(['pull', true, 60]);
    expect(cutWith(undefined, ONE)).toEqual(['pull', true, 60]);
    expect(cutWith(undefined, TWO)).toEqual(['default', false, 45]);
    expect(cutWith(undefined, 'units: in\n')).toEqual(['default', false, 45]);
  });

  it('is none where none is named, and then no mark is moved', () => {
    expect(cutWith('none', ONE)).toEqual(['default', false, 45]);
    const starts = (head: string | undefined, shop: string) =>
      solved(head, shop).value.strokes.map(({ start, stop }) => [start, stop]);
    expect(starts('none', ONE)).toEqual(starts(undefined, 'units: in\n'));
    // At the right hand of the travel and other ends: all of them lie elsewhere.
    expect(starts(undefined, ONE)).toEqual(starts('pull', ONE));
    expect(starts(undefined, ONE)).not.toEqual(starts('none', ONE));
  });

  it('is warned of only where it is named and has another angle than the layer', () => {
    const layers = ', layers: [{bevel: 45}]';
    const told = (head: string | undefined) => solved(head, ONE, layers).warnings.map(({ code }) => code);
    expect(told('pull')).toContain('bevel-not-head');
    expect(told(undefined)).not.toContain('bevel-not-head');
    expect(told('none')).not.toContain('bevel-not-head');
  });
});
