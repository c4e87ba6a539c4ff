import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changed, parseVary } from '../../src/job/change.ts';
import { readJob } from '../../src/job/read.ts';

describe('what is to be varied', () => {
  it('is a place in the job and its values', () => {
    expect(parseVary('mat.layers[1].board=a, b,c')).toEqual({
      changes: ['a', 'b', 'c'].map((value) => ({ path: ['mat', 'layers', 1, 'board'], value })),
    });
  });

  it.each([
    ['mat.layers[1].board', /does not say/],
    ['=a,b', /does not say/],
    ['mat..layers=a,b', /not a place/],
    ['mat.layers[x]=a,b', /not a place/],
    ['__proto__.x=a,b', /not a place/],
    ['mat.outer=a,,b', /a value missing/],
    ['mat.outer=a,b,a', /a value twice/],
    [`mat.outer=${Array.from({ length: 13 }, (_, i) => i).join(',')}`, /13 values are more than the 12/],
  ])('%s is refused', (text, words) => {
    const parsed = parseVary(text);
    expect('problem' in parsed && parsed.problem.code).toBe('vary-unreadable');
    expect('problem' in parsed && parsed.problem.message).toMatch(words);
  });

  it('never throws, and never changes what it is given', () => {
    const path = fc.array(fc.oneof(fc.constantFrom('mat', 'layers', 'board', 'constructor'), fc.nat({ max: 3 })), {
      maxLength: 5,
    });
    fc.assert(
      fc.property(fc.jsonValue(), path, fc.string(), (tree, steps, value) => {
        const before = JSON.stringify(tree);
        const made = changed(tree, { path: steps, value });
        expect(JSON.stringify(tree)).toBe(before);
        if ('problem' in made) expect(made.problem.code).toBe('vary-path');
      }),
    );
  });

  it('is read as if it had been written', () => {
    const text = 'units: mm\nmat: {outer: 300 x 400, layers: [{}, {reveal: 5}]}\nopenings: [{size: 100 x 150}]\n';
    const read = (path: (string | number)[], value: string) => {
      const made = readJob({ text, file: 'job.yaml', change: { path, value } });
      if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join());
      return made.value.job;
    };
    expect(read(['mat', 'layers', 1, 'reveal'], '7').mat.layers[1]!.reveal).toBe(7);
    expect(read(['mat', 'layers', 0, 'bevel'], '60').mat.layers[0]!.bevel.angle).toBe(60);
    expect(read(['mat', 'outer'], '310 x 410').mat.outer).toEqual({ width: 310, height: 410 });
    expect(read(['bench', 'snap'], 'true').bench.snap).toBe(true);
    expect(read(['title'], 'Other').title).toBe('Other');
  });
});
