import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showPath } from '../../src/problems/show.ts';
import { setField } from '../../src/read/edit/set-field.ts';

interface Told {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly hint: string;
  readonly message: string;
}

function told(text: string): readonly Told[] {
  const made = solveJob(text);
  return made.ok ? made.warnings : made.problems;
}
const codes = (text: string): readonly string[] => told(text).map(({ code }) => code);

function withField(text: string, path: readonly (string | number)[], value: string): string {
  const made = setField(text, path, value);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** The hint of the one problem of that code. */
function hint(text: string, code: string): string {
  const found = told(text).filter((each) => each.code === code);
  expect(
    found.map(({ path }) => showPath(path)),
    JSON.stringify(told(text)),
  ).toHaveLength(1);
  return found[0]!.hint;
}

const JOB = 'units: mm\nmat: {layers: [{board: {thickness: 1.4}}]}\nopenings:\n  - {shape: rectangle}\n';

describe('a hint that is followed', () => {
  /** What a place that a hint names could hold. */
  const VALUES: Readonly<Record<string, string>> = {
    'mat.outer': '400 x 500',
    'mat.border': '60',
    'openings[0].artwork': '200 x 300',
    'openings[0].size': '200 x 300',
    'openings[1].artwork': '90 x 120',
    'openings[1].size': '90 x 120',
  };
  const pathOf = (place: string) =>
    place.split(/[.[\]]+/).flatMap((step) => (step === '' ? [] : [/^\d+$/.test(step) ? Number(step) : step]));

  it.each([
    ['nothing at all', JOB],
    ['an outer size alone', withField(JOB, ['mat', 'outer'], '400 x 500')],
    ['a border alone', withField(JOB, ['mat', 'border'], '60')],
    ['an artwork alone', withField(JOB, ['openings', 0, 'artwork'], '200 x 300')],
    ['one of two openings', `${withField(JOB, ['openings', 0, 'size'], '200 x 300')}  - {shape: oval}\n`],
    ['two openings and their mat', `${withField(JOB, ['mat', 'outer'], '700 x 900')}  - {shape: oval}\n`],
  ])('says enough where too little is given: %s', (_, text) => {
    const options = hint(text, 'sizes-not-enough')
      .replace(/^give /, '')
      .split(', or ');
    expect(options.length).toBeGreaterThan(0);
    let followed = 0;
    for (const option of options) {
      // Two that are needed together, each with another word for the same in brackets.
      const ways = option.split(' together with ').map((each) => {
        const [, first = each, second] = /^(\S+) \(or (\S+)\)$/.exec(each) ?? [];
        return second === undefined ? [first] : [first, second];
      });
      for (const chosen of [ways.map((way) => way[0]!), ways.map((way) => way.at(-1)!)]) {
        if (chosen.some((place) => VALUES[place] === undefined)) continue;
        const more = chosen.reduce((now, place) => withField(now, pathOf(place), VALUES[place]!), text);
        expect(codes(more), more).not.toContain('sizes-not-enough');
        followed++;
      }
    }
    expect(followed).toBeGreaterThan(0);
  });

  it('shows an under mat that its reveal did not', () => {
    const text = (reveal: string): string =>
      `units: mm\nmat: {border: 60, layers: [{board: {thickness: 3}}, {board: {thickness: 1.4}, reveal: ${reveal}}]}\nopenings: [{size: 200 x 300}]\nbench: {stack: apart}`;
    const more = /more than ([\d.]+) mm/.exec(hint(text('2.5'), 'strip-hidden'))![1]!;
    expect(codes(text(more))).not.toContain('strip-hidden');
    const least = /make the reveal ([\d.]+) mm or more/.exec(hint(text('3.5'), 'strip-narrow'))![1]!;
    expect(codes(text(least))).not.toContain('strip-narrow');
  });

  it('gives a side that is too short its stroke', () => {
    const text = (clip: number): string =>
      `units: mm\nmat: {border: 60, layers: [{board: {thickness: 3}}]}\nopenings: [{shape: clipped, clip: ${clip}, size: 200 x 300}]`;
    const [found] = told(text(1.5)).filter(({ code }) => code === 'side-too-short');
    const length = Number(/make it longer than ([\d.]+) mm/.exec(found!.hint)![1]);
    expect(codes(text(length / Math.SQRT2 + 0.005))).not.toContain('side-too-short');
    expect(codes(text(length / Math.SQRT2 - 0.01))).toContain('side-too-short');
  });

  it('parts openings that were too near', () => {
    const text = (gap: string): string =>
      `units: mm\nmat: {border: 60, leastBar: 9}\nopenings: [{name: a, size: 90 x 120}, {name: b, size: 90 x 120}]\narrange: {rows: 1, gap: ${gap}}`;
    const [near] = told(text('7')).filter(({ code }) => code === 'openings-near');
    const least = /([\d.]+) mm is the least/.exec(near!.message)![1]!;
    expect(codes(text(least))).toEqual([]);
  });
});

it('of very many openings the first three are named that want a size, and how many more do', () => {
  const openings = Array.from({ length: 24 }, (_, i) => `{shape: rounded, radius: ${i + 1}}`).join(', ');
  expect(
    told(`units: mm\nmat: {border: 50}\nopenings: [${openings}]\narrange: {rows: 3}\n`).map(({ code, hint }) => [
      code,
      hint,
    ]),
  ).toEqual([
    [
      'sizes-not-enough',
      'give mat.outer (or mat.frame) together with openings[0].size together with openings[1].size together with openings[2].size together with 21 more sizes',
    ],
  ]);
});
