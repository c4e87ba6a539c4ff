import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { byQuestions } from '../../../src/cli/new/by-questions.ts';
import { type Starter, start, starterIn } from '../../../src/cli/new/starter.ts';
import type { Answers } from '../../../src/job/answers.ts';
import { placesOf } from '../../../src/job/template-places.ts';
import { LENGTH_UNITS, type LengthUnit } from '../../../src/units/units.ts';
import { scripted } from './scripted.ts';

const NAMES = readdirSync('templates')
  .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  .map((name) => name.replace('.yaml', ''));

async function starterOf(name: string): Promise<Starter> {
  const text = readFileSync(`templates/${name}.yaml`, 'utf8');
  const made = await starterIn('/', { name, summary: '', text });
  if (!made.ok) throw new Error(name);
  return made.value;
}

/** Everything of a report that is a size of the mat, by where it stands. */
function sizesOf(started: Awaited<ReturnType<typeof start>>): ReadonlyMap<string, number> {
  const { solved } = started;
  if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
  const { outer, border, layers, openings, glazing, lettering } = solved.value.report;
  const found = new Map<string, number>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') found.set(path, value);
    else if (typeof value === 'object' && value !== null)
      for (const [key, each] of Object.entries(value)) walk(each, `${path}.${key}`);
  };
  walk({ outer, border, layers, openings, glazing, lettering }, '');
  return found;
}

function same(found: ReadonlyMap<string, number>, wanted: ReadonlyMap<string, number>): void {
  expect([...found.keys()]).toEqual([...wanted.keys()]);
  const off = [...wanted].filter(([path, size]) => !(Math.abs(size - found.get(path)!) <= 0.01));
  expect(off).toEqual([]);
}

/** The same lengths in another unit. */
const inUnit = (mm: number, unit: LengthUnit): string =>
  unit === 'mm' ? String(mm) : unit === 'cm' ? String(mm / 10) : String(mm / 25.4);

describe.each(NAMES)('new %s in every unit', (name) => {
  it.each(LENGTH_UNITS)('keeps all its sizes by options, in %s', async (units) => {
    const starter = await starterOf(name);
    const own = sizesOf(await start(starter, {}, 'a.yaml'));
    expect(own.size).toBeGreaterThan(20);
    same(sizesOf(await start(starter, { units }, 'a.yaml')), own);
  });

  it.each(LENGTH_UNITS)(
    'keeps them by questions that name %s, and changes what is answered to that size',
    async (units) => {
      const starter = await starterOf(name);
      const keep = scripted([
        [/called/u, 'A'],
        [/unit/u, units],
      ]);
      const made = await byQuestions(starter, {}, { out: '/nowhere/a.yaml' }, keep);
      same(sizesOf(made.started), sizesOf(await start(starter, {}, 'a.yaml')));
      for (const { question } of keep.asked)
        if (/width|Border|Mat over|Paper shown|shows of/u.test(question)) expect(question).toContain(`(${units}`);

      const wide = (mm: number) => inUnit(mm, units);
      const size = `${wide(900)} x ${wide(950)}`;
      const borders = /border:/u.test(starter.template.text);
      const outer = scripted([
        [/called/u, 'A'],
        [/unit/u, units],
        [/known of the size/u, borders ? 'border' : 'outer'],
        [/Outer size/u, size],
        [/^Border/u, wide(120)],
        [/reveal|shows of/u, wide(9)],
      ]);
      const changed = await byQuestions(starter, {}, { out: '/nowhere/a.yaml' }, outer);
      const sizes = sizesOf(changed.started);
      const { layers } = placesOf(parse(starter.template.text));
      if (borders) expect(sizes.get('.border.left')).toBeCloseTo(120, 2);
      else
        expect([sizes.get('.outer.width'), sizes.get('.outer.height')]).toEqual([
          expect.closeTo(900, 2),
          expect.closeTo(950, 2),
        ]);
      if (layers > 1) {
        const [top, under] = ['.openings.0.layers.0.face.x', '.openings.0.layers.1.face.x'].map(
          (path) => sizes.get(path)!,
        );
        expect(under! - top!).toBeCloseTo(9, 2);
      }
    },
  );
});

describe('an answer in each unit', () => {
  it.each(LENGTH_UNITS)('is that size, in %s', async (units) => {
    const starter = await starterOf('single');
    const of = (mm: number) => inUnit(mm, units);
    const answers: Answers = {
      units,
      artworks: [`${of(200)} x ${of(300)}`],
      outer: `${of(350)} x ${of(480)}`,
      overlap: of(5),
      weighting: `add ${of(10)}`,
    };
    const sizes = sizesOf(await start(starter, answers, 'a.yaml'));
    const wanted: Readonly<Record<string, number>> = {
      '.outer.width': 350,
      '.openings.0.artwork.size.width': 200,
      '.openings.0.layers.0.face.width': 190,
      '.border.left': 80,
    };
    for (const [path, mm] of Object.entries(wanted)) expect(sizes.get(path), path).toBeCloseTo(mm, 2);
    expect(sizes.get('.border.bottom')! - sizes.get('.border.top')!).toBeCloseTo(10, 2);
  });
});
