import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankList } from '../../src/documents/lists/blank-list.ts';
import { intakeSheets } from '../../src/documents/lists/intake.ts';
import { labelSheets, USUAL_GRID } from '../../src/documents/lists/labels.ts';
import { placement } from '../../src/documents/placement/placement.ts';
import { tickets } from '../../src/documents/ticket/tickets.ts';
import { itemBox } from '../../src/drawing/bounds.ts';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { textBox } from '../../src/fonts/measure.ts';
import { type Box, bottom, contains, grown, right } from '../../src/geometry/box.ts';
import { type Solved, solveJob } from '../../src/outputs/solve-job.ts';
import { FONTS } from '../fonts/loaded.ts';
import { margined } from './margined.ts';
import { SAMPLES, solvedSample } from './tickets.ts';

const LETTER = margined({ width: 215.9, height: 279.4 });
const A4 = margined({ width: 210, height: 297 });
const PAPERS = [LETTER, A4, margined(LETTER, 22)];

/** How deep two boxes reach into each other, mm. */
function depth(a: Box, b: Box): number {
  return Math.min(
    Math.min(right(a), right(b)) - Math.max(a.x, b.x),
    Math.min(bottom(a), bottom(b)) - Math.max(a.y, b.y),
  );
}

const isSquare = (item: Item): boolean => item.kind === 'path' && item.pen === 'tick' && item.fill === 1;

/** Words over words or squares, and whatever runs off the paper. The box of a text reaches to descenders it may not have. */
function faults(sheet: Drawing, margin = 4): readonly string[] {
  const items = sheet.groups.flatMap((group) => group.items);
  const texts = items.flatMap((item) => (item.kind === 'text' && item.text.trim() !== '' ? [item] : []));
  const boxes = texts.map((item) => ({ said: item.text, box: textBox(item, FONTS) }));
  const squares = items.filter(isSquare).map((item) => ({ said: '☐', box: itemBox(item, sheet.pens, FONTS)! }));
  const paper = grown({ x: 0, y: 0, width: sheet.width, height: sheet.height }, -margin);
  const found: string[] = [];
  for (const item of items) {
    const around = itemBox(item, sheet.pens, FONTS);
    if (around !== undefined && !contains(paper, around)) {
      found.push(`off the paper: ${item.kind === 'text' ? item.text : item.kind}`);
    }
  }
  const all = [...boxes, ...squares];
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1)) if (depth(a.box, b.box) > 0.12) found.push(`${a.said} | ${b.said}`);
  });
  return found;
}

const hostile = fc.oneof(
  fc.constantFrom(
    'W'.repeat(200),
    'Ünïcødé Ångström Żółć, Ἀθῆναι, Ёжик в тумане: вторая печать',
    'a '.repeat(100).trim(),
    '<b>Heron</b> & "quoted" \\\\ {braces}',
    'supercalifragilistic-expialidocious-hyphenated-endlessly-without-any-space-at-all-'.repeat(2),
    '1/2 3/4 16 1/2 × 20',
    'עגור 日本 🦢',
  ),
  fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 120 })
    .filter((text) => /^\P{C}+$/u.test(text) && text.trim() !== ''),
);

const board = fc.record({
  name: hostile,
  thickness: fc.constantFrom('0.5 mm', '1.4 mm', '3.1 mm'),
  colour: fc.constant('#eeeeee'),
});

/** Jobs as data; what cannot be solved is left out, since only good jobs come to the bench. */
const jobs = fc
  .record({
    title: hostile,
    customer: fc.option(hostile, { nil: undefined }),
    units: fc.constantFrom('in', 'mm', 'cm'),
    count: fc.integer({ min: 1, max: 12 }),
    boards: fc.array(board, { minLength: 1, maxLength: 4 }),
    reverse: fc.boolean(),
    border: fc.integer({ min: 35, max: 110 }),
    art: fc.tuple(fc.integer({ min: 60, max: 400 }), fc.integer({ min: 60, max: 400 })),
    openings: fc.integer({ min: 1, max: 6 }),
    shape: fc.constantFrom('rectangle', 'rectangle', 'oval', 'rounded', 'polygon'),
    float: fc.boolean(),
    stack: fc.constantFrom('together', 'apart'),
    graduation: fc.constantFrom('1/16 in', '1/64 in', '1 mm', '0.1 mm'),
  })
  .map((given) => {
    const { boards, art, openings, border } = given;
    const layers = boards.map((each, i) => ({
      board: each,
      ...(i === 0 ? {} : { reveal: '8 mm' }),
      ...(given.reverse ? { bevel: { angle: 45, reverse: true } } : {}),
    }));
    const shape = given.shape === 'rounded' ? { radius: '9 mm' } : given.shape === 'polygon' ? { sides: 6 } : {};
    return {
      title: given.title,
      ...(given.customer === undefined ? {} : { customer: given.customer }),
      units: given.units,
      count: given.count,
      mat: { border: `${border} mm`, layers },
      openings: Array.from({ length: openings }, (_, i) => ({
        shape: given.shape,
        ...shape,
        ...(i === 0 ? {} : { name: `number ${i + 1}` }),
        artwork: [`${art[0]} mm`, `${art[1]} mm`],
        [given.float ? 'float' : 'overlap']: '4 mm',
      })),
      bench: { stack: given.stack, graduation: given.graduation },
    };
  });

const solvedJobs = jobs.map((job): Solved | undefined => {
  const solved = solveJob(JSON.stringify(job), { fonts: FONTS, file: 'job.json' });
  return solved.ok ? solved.value : undefined;
});

const good = solvedJobs.filter((solved): solved is Solved => solved !== undefined);

describe('sheets for the bench', { timeout: 120_000 }, () => {
  it('never set a word over another one or off the paper, whatever the job', () => {
    fc.assert(
      fc.property(good, fc.constantFrom(...PAPERS), (solved, paper) => {
        const { sheets } = tickets([solved], { fonts: FONTS, paper, number: '41' });
        for (const sheet of sheets) expect(faults(sheet)).toEqual([]);
      }),
      { numRuns: 15, endOnFailure: true },
    );
  });

  it('hold for several jobs, blanks, labels and the form', () => {
    fc.assert(
      fc.property(fc.array(good, { minLength: 1, maxLength: 3 }), fc.constantFrom(...PAPERS), (solved, paper) => {
        const labels = labelSheets(solved, paper, USUAL_GRID, 'mm', FONTS);
        const made = [
          ...tickets(solved, { fonts: FONTS, paper }).sheets.slice(0, 2),
          ...blankList(solved, { fonts: FONTS, paper }),
          ...intakeSheets(solved[0], 'mm', { fonts: FONTS, paper }),
          ...(labels.ok ? labels.value : []),
        ];
        for (const sheet of made) expect(faults(sheet)).toEqual([]);
      }),
      { numRuns: 6, endOnFailure: true },
    );
  });

  it('part a setting that serves more strokes than a column holds', () => {
    const opening = (i: number) => ({ name: `the ${i}th of many small states`, size: ['30 mm', '24 mm'] });
    const text = JSON.stringify({
      units: 'mm',
      mat: { border: 40 },
      openings: Array.from({ length: 225 }, (_, i) => opening(i + 1)),
      arrange: { rows: Array.from({ length: 15 }, () => 15), gap: 15 },
    });
    const solved = solveJob(text, { fonts: FONTS, file: 'job.json' });
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const { sheets } = tickets([solved.value], { fonts: FONTS, paper: LETTER });
    expect(sheets.length).toBeGreaterThan(1);
    for (const sheet of sheets) expect(faults(sheet)).toEqual([]);
  });

  it('keep the words of the placement sheet apart', () => {
    fc.assert(
      fc.property(good, (solved) => {
        const made = placement(solved.mat, solved.job, FONTS);
        if (!made.ok) throw new Error('every job here has an artwork');
        const { drawing } = made.value.sheet;
        expect(faults(drawing, 0)).toEqual([]);
      }),
      { numRuns: 25, endOnFailure: true },
    );
  });

  it('see a word that is moved onto another one', () => {
    const solved = solvedSample(SAMPLES.find(({ name }) => name === 'example-heron')!);
    const [sheet] = tickets([solved], { fonts: FONTS, paper: LETTER }).sheets;
    expect(faults(sheet!)).toEqual([]);
    const [group] = sheet!.groups;
    const texts = group!.items.filter((item) => item.kind === 'text');
    const onto = { ...texts[3]!, at: texts[8]!.kind === 'text' ? texts[8]!.at : { x: 0, y: 0 } };
    expect(faults({ ...sheet!, groups: [{ ...group!, items: [...group!.items, onto] }] })).not.toEqual([]);
    const away = { ...texts[3]!, at: { x: 214, y: 100 } };
    expect(faults({ ...sheet!, groups: [{ ...group!, items: [...group!.items, away] }] })).not.toEqual([]);
  });

  it('show names whole, however long', () => {
    for (const title of ['W'.repeat(200), 'Heron '.repeat(33).trim()]) {
      const text = JSON.stringify({ title, mat: { outer: '16 x 20' }, openings: [{ artwork: '10 x 12' }] });
      const solved = solveJob(text, { fonts: FONTS, file: 'job.json' });
      if (!solved.ok) throw new Error('a good job');
      for (const sheets of [
        tickets([solved.value], { fonts: FONTS, paper: LETTER }).sheets,
        intakeSheets(solved.value, 'in', { fonts: FONTS, paper: LETTER }),
      ]) {
        const words = sheets[0]!.groups.flatMap(({ items }) =>
          items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
        );
        expect(words.join('').replaceAll(' ', '')).toContain(title.replaceAll(' ', ''));
      }
    }
  });
});
