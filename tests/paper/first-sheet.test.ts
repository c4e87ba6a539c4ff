import { describe, expect, it } from 'vitest';
import { make, solveLoading } from '../../src/index.ts';
import type { PageRecord } from '../../src/paper/manifest.ts';
import { showProblem } from '../../src/problems/show.ts';
import { BARS, HERON, type JobText, LARGE, PAPERS, SMALL, TEMPLATES } from '../documents/pattern-printed.ts';
import { inMm, lengthsIn } from '../documents/tickets.ts';
import { type ReadPage, type ReadPoint, readPdf } from '../readers/pdf-lines.ts';

async function printed({ name, job, shop }: JobText, options: Parameters<typeof make<'pattern'>>[2]) {
  const solved = await solveLoading(job, {
    file: name,
    ...(shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } }),
  });
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  const made = await make('pattern', { jobs: [solved.value] }, options);
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  const { units } = solved.value.job;
  const [first] = made.value.files;
  return { solved: solved.value, units, record: made.value.record[0]!, ...(await readPdf(first!.bytes)) };
}

/** A point of a page in the drawing, by the page's record alone. */
function inDrawing({ x, y }: ReadPoint, page: PageRecord): ReadPoint {
  const { pageX, pageY, rotation, scale, width, height } = page as Required<PageRecord>;
  const [u, v] = [x * scale.x - pageX, y * scale.y - pageY];
  const [dx, dy] = (
    [
      [u, v],
      [v, height - u],
      [width - u, height - v],
      [width - v, u],
    ] as const
  )[rotation / 90]!;
  return { x: page.x! + dx, y: page.y! + dy };
}

/** Middles of the dashed crosses of the drawing, 6 mm wide and high, in the drawing's mm; each once. */
function crosses(pages: readonly ReadPage[], records: readonly PageRecord[]): readonly ReadPoint[] {
  const found: ReadPoint[] = [];
  for (const [i, page] of pages.entries()) {
    if (records[i]!.pageX === undefined) continue;
    const arms = page.lines.filter(
      ({ form, dash, from, to }) =>
        form &&
        dash.length === 2 &&
        Math.abs(dash[0]! - 0.8) < 1e-3 &&
        Math.abs(Math.hypot(to.x - from.x, to.y - from.y) - 6) < 0.01,
    );
    const middle = ({ from, to }: (typeof arms)[number]): ReadPoint => ({
      x: (from.x + to.x) / 2,
      y: (from.y + to.y) / 2,
    });
    const level = arms.filter(({ from, to }) => Math.abs(from.y - to.y) < 1e-3).map(middle);
    const upright = arms.filter(({ from, to }) => Math.abs(from.x - to.x) < 1e-3).map(middle);
    for (const at of level) {
      if (!upright.some(({ x, y }) => Math.hypot(x - at.x, y - at.y) < 1e-3)) continue;
      const point = inDrawing(at, records[i]!);
      if (!found.some(({ x, y }) => Math.hypot(x - point.x, y - point.y) < 0.01)) found.push(point);
    }
  }
  return found;
}

const words = ({ texts }: ReadPage): string => texts.map(({ text }) => text).join(' ');
const ALL = [...TEMPLATES, HERON, BARS, ...LARGE, ...SMALL];

describe.each(ALL)('the first sheet of $name', (job) => {
  it.each(PAPERS)('is one page of %s, tells how many come out, and checks by whole lengths', async (paper) => {
    const { pages, record, units, solved } = await printed(job, { paper });
    const checks = record.pages.filter(({ pageX }) => pageX === undefined).length;
    expect(checks).toBe(1);
    expect(record.summary).toMatch(new RegExp(`^${pages.length} pages? of `));
    expect(words(pages[0]!)).toContain(`${pages.length}: this one and ${pages.length - 1} of the pattern`);

    const points = crosses(pages, record.pages);
    expect(points).toHaveLength(4);
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    const step = units === 'in' ? 25.4 : 50;
    for (const length of [wide, high]) expect(Math.abs(length / step - Math.round(length / step))).toBeLessThan(1e-4);
    // A tape needs some length: half of the board at least, where that is more than one step.
    const { board } = record;
    for (const [length, whole] of [
      [wide, board!.width],
      [high, board!.height],
    ] as const)
      expect(length).toBeGreaterThanOrEqual(Math.min(step, whole / 2 - step));

    const all = words(pages[0]!);
    for (const [label, length] of [
      ['across', wide],
      ['down', high],
    ] as const) {
      const shown = new RegExp(`${label}, from cross to cross ([\\d ./]+ (?:in|mm|cm))\\b`).exec(all)?.[1];
      expect(lengthsIn(shown ?? '')[0]).toBeCloseTo(length, 2);
    }
    const alike = all.indexOf('both alike, near');
    const [, inches, mm] = /near (.+?) in \(([\d.]+) mm\)|$/u.exec(all.slice(alike))!;
    if (units === 'in') {
      const diagonal = Math.hypot(wide, high);
      expect(Math.abs(inMm(inches!, 'in') - diagonal)).toBeLessThanOrEqual(25.4 / 32 + 0.01);
      expect(Math.abs(Number(mm) - diagonal)).toBeLessThanOrEqual(0.51);
    }

    const own = solved.strokes.filter(({ layer }) => layer === 1);
    if (own.length > 0 && own.length <= 80) {
      expect(all).toContain('Guide settings');
      for (const { order } of own)
        expect(all).toMatch(new RegExp(`\\b${order} (?:top|right|bottom|left|side|upper|lower)`));
    }
  });
});

it('is read one column after the other', async () => {
  for (const job of [HERON, BARS, ...TEMPLATES.slice(0, 6)])
    for (const paper of PAPERS) {
      const { pages } = await printed(job, { paper });
      const { texts } = pages[0]!;
      const from = texts.findIndex(({ text }) => text === 'Measure the four lines');
      const columns: number[] = [];
      let last = { x: 0, y: 0 };
      for (const { at, turn } of texts.slice(from)) {
        if (turn !== 0) continue;
        // A column begins far above what came last.
        if (at.y < last.y - 20) columns.push(at.x);
        last = at;
      }
      expect(columns.length).toBeLessThanOrEqual(2);
      expect([...columns].sort((a, b) => a - b)).toEqual(columns);
    }
});

it('explains and checks only what is drawn', async () => {
  const { pages } = await printed(HERON, { paper: 'letter', show: ['board', 'cut'] });
  const all = words(pages[0]!);
  expect(all).toContain('line to follow with the blade');
  expect(all).toContain('board');
  for (const absent of ['tick: S start', 'edge of the opening on the face', 'crosses to check', 'from cross to cross'])
    expect(all).not.toContain(absent);
  expect(all).toContain('diagonals of the lines to cut');
});

it('corner sheets are not measured across one another', async () => {
  const { pages, record } = await printed(HERON, { paper: 'letter', extent: 'corners' });
  expect(crosses(pages, record.pages)).toEqual([]);
  expect(words(pages[0]!)).not.toContain('tape measure');
});

it('says where letters at ticks are told instead, which stand on no first sheet', async () => {
  const crowded = {
    name: 'narrow gaps',
    job: `mat: {outer: 5 x 5}\nopenings: [${Array(12).fill('{size: 1/2 x 1/2}').join(', ')}]\narrange: {columns: 4, gap: 1/4}\n`,
  };
  const solved = await solveLoading(crowded.job, { file: 'narrow.yaml' });
  if (!solved.ok) throw new Error(solved.problems.map(showProblem).join('\n'));
  const made = await make('pattern', { jobs: [solved.value] }, { paper: 'letter' });
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  const letters = made.warnings.filter(
    ({ code, message }) => code === 'label-without-room' && /: [SE] of stroke/.test(message),
  );
  expect(letters.length).toBeGreaterThan(0);
  for (const { hint } of letters) expect(hint).toBe('the arrow beside the number of a stroke runs from its S to its E');
});
