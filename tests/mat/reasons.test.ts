import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import { readJob } from '../../src/job/read.ts';
import type { Mat } from '../../src/mat/model.ts';
import type { Reason } from '../../src/mat/reasons/reason.ts';
import { reasons } from '../../src/mat/reasons/reasons.ts';
import { showReason } from '../../src/mat/reasons/show-reason.ts';
import { seenLayers } from '../../src/mat/sizes/unknowns.ts';
import { solve } from '../../src/mat/solve.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { FONTS } from '../fonts/loaded.ts';
import { all, inch, inches, jobOf, layer, opening, sampleJob, solvedMat } from './job.ts';
import { groupJob, groupShop } from './random-groups.ts';

const sumOf = ({ from }: Reason): number => from.reduce((sum, { length, times }) => sum + length * times, 0);

function jobFrom(text: string, shopText?: string): Job {
  const read = readJob({ text, file: 'job.yaml', ...(shopText === undefined ? {} : { shopText }) });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.job;
}

/** The same sizes, read off the finished mat. */
function measured(job: Job, mat: Mat): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const extent of ['width', 'height'] as const) found.set(`outer.${extent}`, mat.outer[extent]);
  if (job.openings.length === 1 && job.openings[0]!.place === undefined)
    for (const side of ['top', 'right', 'bottom', 'left'] as const) found.set(`border.${side}`, mat.border[side]);
  mat.openings.forEach(({ layers, sight, artwork }, index) => {
    const lowest = layers[seenLayers(job, job.openings[index]!).at(-1)!]!;
    const request = job.openings[index]!;
    // The box of slanting sides that are measured at the sight is larger than the size that is solved for.
    const plain = request.measure === 'face' || shapeOf(request.shape).growsUnevenly !== true;
    for (const extent of ['width', 'height'] as const) {
      if (plain) found.set(`openings[${index}].opening.${extent}`, lowest.faceBox[extent]);
      found.set(`openings[${index}].sight.${extent}`, sight[extent]);
    }
    if (artwork === undefined) return;
    const sign = artwork.floated ? -1 : 1;
    for (const side of ['top', 'right', 'bottom', 'left'] as const)
      found.set(`openings[${index}].cover.${side}`, sign * artwork.overlap[side]);
  });
  return found;
}

function checkJob(job: Job, mat: Mat): number {
  const made = reasons(job);
  for (const each of made) {
    expect(Math.abs(sumOf(each) - (each.before ?? each.value)), `${each.size} of ${job.title}`).toBeLessThan(1e-6);
    for (const { kind, path } of each.from) expect(path === undefined, kind).toBe(kind === 'usual' || kind === 'shape');
  }
  const known = new Map(made.map(({ size, value }) => [size, value]));
  const read = measured(job, mat);
  for (const [size, value] of read)
    expect(Math.abs((known.get(size) ?? Number.NaN) - value), `${size} of ${job.title}`).toBeLessThan(1e-6);
  return read.size;
}

const of = (job: Job, size: string): Reason => {
  const found = reasons(job).find((each) => each.size === size);
  if (found === undefined) throw new Error(`no reason for ${size}`);
  return found;
};
const rules = (reason: Reason): readonly string[] => reason.rules.map(({ what }) => what);

describe('why a size is what it is', () => {
  const folder = new URL('../../templates/', import.meta.url);
  const shop = readFileSync(new URL('shop.yaml', folder), 'utf8');
  const names = readdirSync(folder).filter((name) => name !== 'shop.yaml');

  it.each(names)('each size of %s is made of what it says, and is the size of the mat', (name) => {
    const job = jobFrom(readFileSync(new URL(name, folder), 'utf8'), shop);
    const made = solve(job, { fonts: FONTS });
    expect(made.ok && checkJob(job, made.value)).toBeGreaterThanOrEqual(6);
  });

  it('so are those of groups of every shape, snapped or not', () => {
    let compared = 0;
    fc.assert(
      fc.property(groupJob, fc.boolean(), ({ text }, snapped) => {
        const job = jobFrom(
          snapped ? text.replace('bench: {', 'bench: {snap: true, graduation: 2, ') : text,
          groupShop(),
        );
        const made = solve(job);
        if (made.ok) compared += checkJob(job, made.value);
      }),
      { numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(200);
  });

  it('tells what is given, what follows, and the habits that fill in', () => {
    const job = sampleJob({ bench: { snap: false } });
    expect(of(job, 'outer.width')).toMatchObject({ given: ['mat', 'outer'], value: inch(16) });
    const left = of(job, 'border.left');
    expect(left.given).toBeUndefined();
    expect(rules(left)).toEqual(['left = right']);
    expect(left.from.map(({ what }) => what).sort()).toEqual([
      'artwork width',
      'outer width',
      'overlap at the left',
      'overlap at the right',
      'reveal of under mat 1',
    ]);
    expect(rules(of(job, 'border.bottom'))).toEqual(['weighting (bottom = top + 1/2 in)']);
    const bare = jobOf({
      openings: [opening({ artwork: inches(8, 10) })],
      mat: { outer: inches(14, 16), layers: [layer(), layer()] },
    });
    const reveal = of(bare, 'reveals[1]');
    expect(reveal.from).toMatchObject([{ kind: 'usual', what: 'usual reveal', length: inch(1 / 4), times: 1 }]);
    expect(of(bare, 'openings[0].overlap.top').from[0]).toMatchObject({ kind: 'usual', what: 'usual overlap' });
    expect(rules(of(bare, 'openings[0].overlap.top'))).toEqual(['equal overlaps']);
  });

  it('writes the sum out', () => {
    const openings = [opening({ size: inches(10, 13) })];
    const outside = jobOf({ openings, mat: { outer: inches(16, 20) } });
    expect(showReason(of(outside, 'border.left'), 'in')).toBe('(16 in − 10 in) / 2');
    const border = { left: inch(2.75), right: inch(2.75), top: inch(3), bottom: inch(3) };
    const inside = jobOf({ openings: [opening()], mat: { outer: inches(16, 20), border } });
    expect(showReason(of(inside, 'openings[0].opening.width'), 'in')).toBe('16 in − 2 3/4 in − 2 3/4 in');
    const text = 'mat: {outer: 16 x 20, border: {sides: 2 3/4, top: 3, bottom: 3}}\nopenings: [{shape: rectangle}]';
    const written = of(jobFrom(text), 'openings[0].opening.width');
    expect(showReason(written, 'in')).toBe('16 in − 2 × 2 3/4 in');
    const frame = jobFrom('mat: {frame: {inside: 16 x 20}}\nopenings: [{size: 10 x 13}]');
    expect(showReason(of(frame, 'outer.width'), 'in')).toBe('16 in − 1/8 in');
  });

  it('knows a size that the others say already for a check', () => {
    const openings = [opening({ size: inches(8, 10) })];
    const borders = { left: inch(3), right: inch(3) };
    const twice = jobOf({ openings, mat: { outer: inches(14, 16), border: borders } });
    expect(of(twice, 'outer.width').spare).toBe(true);
    expect(of(twice, 'border.left').spare).toBe(true);
    expect(of(twice, 'outer.height').spare).toBeUndefined();
    const once = jobOf({ openings, mat: { outer: inches(14, 16), border: { left: inch(3) } } });
    expect(of(once, 'outer.width').spare).toBeUndefined();
  });

  it('keeps what the sizes alone make apart from what snapping and the cutter made', () => {
    const job = sampleJob({
      mat: { outer: inches(16 + 1 / 50, 20) },
      openings: [opening({ artwork: inches(10.5, 13.5), overlap: all(inch(1 / 4)) })],
    });
    const left = of(job, 'border.left');
    expect(left.before).toBeDefined();
    expect(left.value).toBeCloseTo(solvedMat(job).border.left, 9);
    expect(sumOf(left)).toBeCloseTo(left.before!, 9);
    const cut: Job = { ...job, asCut: { outer: inches(16.125, 20), blanks: [], openings: [] } };
    expect(of(cut, 'outer.width')).toMatchObject({ value: inch(16.125), before: inch(16 + 1 / 50) });
    expect(checkJob(cut, solvedMat(cut))).toBeGreaterThan(6);
  });

  it('has none where the job cannot be solved', () => {
    expect(reasons(jobOf({ openings: [opening()] }))).toEqual([]);
  });
});

describe('a sum of sizes', () => {
  const sum = (...parts: readonly (readonly [mm: number, times: number])[]): string =>
    showReason({ from: parts.map(([length, times]) => ({ kind: 'given', what: '', length, times })) }, 'mm');

  it('is told over the least divisor that leaves whole numbers', () => {
    expect(sum([60, 1], [30, -2])).toBe('60 mm − 2 × 30 mm');
    expect(sum([60, 1 / 2], [30, -1])).toBe('(60 mm − 2 × 30 mm) / 2');
    expect(sum([60, 1 / 6], [30, 1 / 3])).toBe('(60 mm + 2 × 30 mm) / 6');
    expect(sum([60, 1 / 12], [30, -1 / 8], [12, 1])).toBe('0.0833 × 60 mm + 12 mm − 0.125 × 30 mm');
    expect(sum([60, -1 / 12], [30, 1 / 4])).toBe('(3 × 30 mm − 60 mm) / 12');
    expect(sum([60, 0.3], [30, 1])).toBe('0.3 × 60 mm + 30 mm');
  });
});
