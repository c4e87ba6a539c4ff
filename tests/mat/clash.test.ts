import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { SIDES } from '../../src/geometry/sides.ts';
import type { Job } from '../../src/job/job.ts';
import { readJob } from '../../src/job/read.ts';
import type { Reason } from '../../src/mat/reasons/reason.ts';
import { reasons } from '../../src/mat/reasons/reasons.ts';
import { solveSizes } from '../../src/mat/sizes/sizes.ts';
import type { Clashing, Problem } from '../../src/problems/problem.ts';
import { clearField, setField } from '../../src/read/edit/set-field.ts';
import { parseSize } from '../../src/units/parse.ts';
import { jobWithout, wholeMat } from './whole-mat.ts';

type Path = readonly (string | number)[];
type Tree = { readonly [key: string | number]: Tree };

const contradictions = (job: Job): readonly Problem[] => {
  const made = solveSizes(job);
  return made.ok ? [] : made.problems.filter(({ code }) => code === 'sizes-contradict');
};

/** The job with some of what it states, by path; a reveal, a side and a size each by itself. */
function only(job: Job, paths: readonly Path[]): Job {
  const kept = new Set(paths.map((path) => path.join(' ')));
  const has = (...path: Path): boolean => kept.has(path.join(' '));
  const sides = (given: object, ...path: Path) =>
    Object.fromEntries(Object.entries(given).filter(([side]) => has(...path, side)));
  const [first] = job.openings;
  const { size, artwork, overlap, float, ...shape } = first!;
  const { outer, border, layers, ...mat } = job.mat;
  return {
    ...job,
    mat: {
      ...mat,
      border: sides(border, 'mat', 'border'),
      layers: layers.map(({ reveal, ...layer }, i) =>
        reveal !== undefined && has('mat', 'layers', i, 'reveal') ? { ...layer, reveal } : layer,
      ),
      ...(outer !== undefined && has('mat', 'outer') ? { outer } : {}),
    },
    openings: [
      {
        ...shape,
        overlap: sides(overlap, 'openings', 0, 'overlap'),
        ...(float === undefined ? {} : { float: sides(float, 'openings', 0, 'float') }),
        ...(size !== undefined && has('openings', 0, 'size') ? { size } : {}),
        ...(artwork !== undefined && has('openings', 0, 'artwork') ? { artwork } : {}),
      },
    ],
  };
}

const off = fc.oneof(fc.double({ min: 0.5, max: 9, noNaN: true }), fc.double({ min: -9, max: -0.5, noNaN: true }));

describe('a clashing set', () => {
  it('clashes by itself, and agrees as soon as any one of it is left out', () => {
    let sets = 0;
    fc.assert(
      fc.property(wholeMat, off, fc.subarray([...SIDES], { minLength: 1 }), fc.boolean(), (whole, by, sides, wide) => {
        const job = jobWithout(whole);
        const border = { ...job.mat.border };
        for (const [n, side] of sides.entries()) border[side] = border[side]! + by * (n + 1);
        const outer = { ...job.mat.outer!, width: job.mat.outer!.width + (wide ? 3 * by : 0) };
        for (const problem of contradictions({ ...job, mat: { ...job.mat, border, outer } })) {
          const clash = problem.clash!;
          expect(clash[0]!.path).toEqual(problem.path);
          const wrong = { ...job, mat: { ...job.mat, border, outer } };
          const paths = clash.map(({ path }) => path);
          expect(contradictions(only(wrong, paths)).length).toBeGreaterThan(0);
          for (const path of paths)
            expect(
              contradictions(
                only(
                  wrong,
                  paths.filter((each) => each !== path),
                ),
              ),
            ).toEqual([]);
          sets++;
        }
      }),
      { numRuns: 60 },
    );
    expect(sets).toBeGreaterThan(60);
  });

  it('is the shortest where a size is stated in more ways than one', () => {
    const text =
      'units: mm\nmat: {outer: 300 x 400, border: {left: 50, right: 40}}\nopenings: [{artwork: 212 x 300, overlap: 6, size: 200 x 288}]';
    const [problem] = problemsOf(text);
    expect(problem!.clash!.map(({ what }) => what)).toEqual([
      'outer width',
      'opening width',
      'left border',
      'right border',
    ]);
  });
});

const shop = readFileSync(new URL('../../templates/shop.yaml', import.meta.url), 'utf8');

function read(text: string) {
  const made = readJob({ text, file: 'job.yaml', shopText: shop });
  if (!made.ok) throw new Error(`${text}\n${JSON.stringify(made.problems)}`);
  return made.value;
}

const problemsOf = (text: string): readonly Problem[] => {
  const { job, locate } = read(text);
  return locate(contradictions(job));
};

function edited(result: ReturnType<typeof setField>): string {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const at = (text: string, path: Path): unknown =>
  path.reduce<Tree | undefined>((node, step) => node?.[step], parse(text) as Tree);

/** The text with one of a clash as it would go with the others. */
function follow(text: string, { path, also, what, instead }: Clashing): string {
  const value = `${instead!} mm`;
  return [path, ...also].reduce((now, each) => {
    const was = at(now, each);
    const whole = Array.isArray(was) ? was.join(' x ') : String(was);
    const size = parseSize(whole, read(text).job.units);
    if (!/width|height/.test(what) || !size.ok) return edited(setField(now, each, value));
    const { width, height } = size.value;
    const sides = what.includes('width') ? `${value} x ${height} mm` : `${width} mm x ${value}`;
    return edited(setField(now, each, sides));
  }, text);
}

const templates = readdirSync(new URL('../../templates/', import.meta.url)).filter(
  (name) => name.endsWith('.yaml') && name !== 'shop.yaml',
);

/** What a template leaves to be worked out, as one who writes it down wrongly would. */
function wronglyStated(text: string, { size, value }: Reason, sizes: ReadonlyMap<string, number>): string | undefined {
  const mm = (length: number): string => `${length + 7} mm`;
  const opening = /^openings\[(\d+)\]\.opening\.width$/.exec(size);
  if (size === 'outer.width')
    return edited(setField(text, ['mat', 'outer'], `${mm(value)} x ${sizes.get('outer.height')!} mm`));
  if (size === 'border.left' || size === 'border.top') {
    const border = at(text, ['mat', 'border']);
    const side = size.slice('border.'.length);
    if (border !== undefined && typeof border !== 'object') return undefined;
    if (border !== undefined && 'sides' in (border as object)) return undefined;
    return edited(setField(text, ['mat', 'border', side], mm(value)));
  }
  if (opening === null) return undefined;
  const index = Number(opening[1]);
  const height = sizes.get(`openings[${index}].opening.height`)!;
  return edited(setField(text, ['openings', index, 'size'], `${mm(value)} x ${height} mm`));
}

describe('what a contradiction says can be followed', () => {
  // Of the lettered one, whatever is stated wrongly its overlaps and borders take up.
  it.each(templates.filter((name) => name !== 'lettered.yaml'))(
    'one of %s is resolved by leaving out, or changing as proposed, any one of its set',
    (name) => {
      let [cleared, followed] = [0, 0];
      const text = readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8');
      const made = reasons(read(text).job);
      const sizes = new Map(made.map(({ size, value }) => [size, value]));
      for (const reason of made.filter(({ given }) => given === undefined)) {
        const wrong = wronglyStated(text, reason, sizes);
        if (wrong === undefined) continue;
        for (const problem of problemsOf(wrong)) {
          const still = (now: string): boolean => problemsOf(now).some(({ message }) => message === problem.message);
          for (const each of problem.clash!) {
            expect(at(wrong, each.path), `${name} ${each.what}`).toBeDefined();
            if (each.fixed !== true) {
              const less = [each.path, ...each.also].reduce((now, path) => edited(clearField(now, path)), wrong);
              expect(still(less), `${name} without ${each.what}\n${problem.message}\n${less}`).toBe(false);
              cleared++;
            }
            if (each.instead !== undefined) {
              const other = follow(wrong, each);
              expect(still(other), `${name} with another ${each.what}\n${problem.message}\n${other}`).toBe(false);
              followed++;
            }
          }
        }
      }
      expect(cleared + followed).toBeGreaterThan(2);
    },
  );

  it('a length that was written once for several sides is proposed as one that goes for all of them', () => {
    const text = 'units: mm\nmat: {border: 50}\nopenings: [{size: 190 x 290, artwork: 200 x 300, overlap: 6}]';
    const problems = problemsOf(text);
    expect(problems.map(({ message, path }) => [path, message])).toEqual([
      [['openings', 0, 'overlap'], 'overlap 6 mm is given, but the other sizes make 5 mm (difference 1 mm)'],
    ]);
    expect(problemsOf(edited(setField(text, ['openings', 0, 'overlap'], 5)))).toEqual([]);
    const sides = 'units: mm\nmat: {outer: 300 x 400, border: {sides: 60}}\nopenings: [{size: 200 x 300}]';
    expect(problemsOf(sides)[0]!.clash!.map(({ path, instead }) => [path, instead])).toEqual([
      [['mat', 'outer'], 320],
      [['openings', 0, 'size'], 180],
      [['mat', 'border', 'sides'], 50],
    ]);
  });

  it('two contradictions that have nothing to do with each other each have their set', () => {
    const text =
      'units: mm\nmat: {outer: 300 x 400, border: {left: 60, right: 60, top: 40, bottom: 40}}\nopenings: [{size: 200 x 300}]';
    const problems = problemsOf(text);
    expect(problems.map(({ clash }) => clash!.map(({ what }) => what))).toEqual([
      ['outer width', 'opening width', 'left border', 'right border'],
      ['outer height', 'opening height', 'top border', 'bottom border'],
    ]);
  });

  it('names reveals that are stated side by side with it, each by its length and none as what else could be changed', () => {
    const text =
      'units: mm\nmat: {outer: 400 x 500, border: {left: 100, right: 100}, layers: [{}, {reveal: {top: 5, right: 6, bottom: 5, left: 7}}]}\nopenings: [{size: 200 x 280}]';
    const [problem] = problemsOf(text);
    expect(problem!.clash!.map(({ path, what, value, instead }) => [path.join('.'), what, value, instead])).toEqual([
      ['mat.outer', 'outer width', 400, 413],
      ['openings.0.size', 'opening width', 200, 187],
      ['mat.border.left', 'left border', 100, 87],
      ['mat.border.right', 'right border', 100, 87],
      ['mat.layers.1.reveal', 'reveal of under mat 1 at the left', 7, undefined],
      ['mat.layers.1.reveal', 'reveal of under mat 1 at the right', 6, undefined],
    ]);
  });
});
