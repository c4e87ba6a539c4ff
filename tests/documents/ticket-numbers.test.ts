import { describe, expect, it } from 'vitest';
import { checks, diagonal } from '../../src/documents/ticket/checks.ts';
import { chopSizes, materialRows } from '../../src/documents/ticket/materials.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { FONTS } from '../fonts/loaded.ts';
import type { ReadPage, ReadText } from '../readers/pdf-lines.ts';
import { inMm, lengthsIn, MM_PER_POINT, readSheets, SAMPLES, solvedSample, wordsOf } from './tickets.ts';

const ARM = 28 * MM_PER_POINT;
const near = (a: number, b: number, off = 1e-6): boolean => Math.abs(a - b) <= off;

/** A row: its reading, what stands beside it and below it down to the next one. */
interface Row {
  readonly reading: ReadText;
  readonly page: ReadPage;
  readonly around: readonly ReadText[];
}

function rowsOf(pages: readonly ReadPage[]): readonly Row[] {
  return pages.flatMap((page) => {
    const readings = page.texts.filter(({ size }) => size >= ARM - 1e-3);
    return readings.map((reading): Row => {
      const below = readings
        .filter((other) => near(other.at.x, reading.at.x, 0.01) && other.at.y > reading.at.y)
        .map(({ at }) => at.y);
      const end = Math.min(reading.at.y + 32, ...below.map((y) => y - 6.6));
      const right = reading.at.x < page.width / 2 ? page.width / 2 - 2 : page.width;
      const around = page.texts.filter(
        ({ at }) => at.x >= reading.at.x - 0.01 && at.x < right && at.y > reading.at.y - 6.6 && at.y < end,
      );
      return { reading, page, around };
    });
  });
}

/** The white numbers of a row that have a square to tick at their right: those of its strokes. */
const ordersIn = (row: Row): number[] =>
  row.around
    .filter(({ fill, text }) => fill === '#ffffff' && /^\d+$/.test(text))
    .filter(({ at }) =>
      row.page.lines.some(
        ({ from, to }) =>
          from.x === to.x &&
          from.x > at.x &&
          from.x < at.x + 6 &&
          Math.abs(from.y - to.y) < 4 &&
          Math.min(from.y, to.y) < at.y &&
          Math.max(from.y, to.y) > at.y - 1,
      ),
    )
    .map(({ text }) => Number(text));

describe.each(SAMPLES)('the ticket of $name', (sample) => {
  const solved = solvedSample(sample);
  const { report, mat, job } = solved;
  let read: ReturnType<typeof readSheets<'ticket'>> | undefined;
  const sheets = () => {
    read ??= readSheets('ticket', [solved]);
    return read;
  };

  it('has a reading for every stroke, at arm’s length, in one unit, as check says', async () => {
    const { pages } = await sheets();
    const rows = rowsOf(pages);
    const seen = rows.flatMap(ordersIn);
    expect([...seen].sort((a, b) => a - b)).toEqual(report.strokes.map(({ order }) => order).sort((a, b) => a - b));
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    for (const row of rows) {
      for (const order of ordersIn(row)) {
        const stroke = report.strokes.find((each) => each.order === order)!;
        const said = row.around.map(({ text }) => text);
        if (stroke.beyondGuide) {
          expect(said.join(' ')).toMatch(/guide OFF|straightedge/);
          continue;
        }
        const unit = stroke.setting.text.split(' ').at(-1)!;
        expect(said).toContain(unit);
        // A graduation in inches comes out to the hundredth of a millimetre in a metric job.
        const off = Math.abs(inMm(row.reading.text, unit) - stroke.setting.value);
        expect([order, off < (unit === 'in' ? 1e-4 : 0.00501)]).toEqual([order, true]);
        for (const sense of ['scant', 'full']) {
          expect(said.includes(sense)).toBe(stroke.setting.sense === sense);
        }
        const decimal = row.around.find(({ text, size }) => size < 4 && /^\d+\.\d{2,3}$/.test(text))!.text;
        // Readings within 0.15 mm are one setting, at their middle.
        expect(near(inMm(decimal, unit), stroke.guide, 0.075 + (unit === 'mm' ? 0.005001 : 0.0128))).toBe(true);
      }
    }
  });

  it('names the sides as they are seen from the back', async () => {
    const { pages } = await sheets();
    for (const row of rowsOf(pages)) {
      const words = row.around.map(({ text }) => text).join(' ');
      expect(words).toContain('seen from the BACK');
      for (const order of ordersIn(row)) {
        const { side, face } = report.strokes.find((each) => each.order === order)!;
        // In the back view the face's left is at the right: the stroke's own place says so.
        const middle = (face.from.x + face.to.x) / 2;
        const name = side === 'left' || side === 'right' ? (side === 'left' ? 'right' : 'left') : side;
        if (mat.openings.length === 1 && name === 'right') expect(middle).toBeGreaterThan(mat.outer.width / 2);
        expect(words).toMatch(new RegExp(`\\b${order} (?:.* )?${name}\\b`));
      }
      if (ordersIn(row).some((order) => report.strokes.find((s) => s.order === order)!.guideFrom === 'far'))
        expect(words).toContain('FAR edge on the guide');
    }
  });

  it('has every blank at 20 points or more, as large as check says', async () => {
    const { pages } = await sheets();
    const large = pages.flatMap(({ texts }) =>
      texts.filter(({ text, size }) => size >= 20 * MM_PER_POINT && /^[\d ./]+ × [\d ./]+ \w+$/.test(text)),
    );
    expect(large).toHaveLength(report.layers.length);
    report.layers.forEach(({ blank }, i) => {
      const [width, height] = lengthsIn(large[i]!.text);
      expect(near(width!, blank.width, job.bench.graduation / 2 + 1e-6)).toBe(true);
      expect(near(height!, blank.height, job.bench.graduation / 2 + 1e-6)).toBe(true);
      if (!near(width!, blank.width, 0.06) || !near(height!, blank.height, 0.06))
        expect(wordsOf(pages)).toMatch(/\((?:exact|scant|full) × (?:exact|scant|full): /);
    });
  });

  const per = { in: 25.4, mm: 1, cm: 10 }[report.units];
  const small = (mm: number): string => `${Number((mm / per).toFixed(per === 1 ? 2 : 3))} ${report.units}`;

  it('says where the scribe starts and stops, as the marks of check lie', async () => {
    const words = wordsOf((await sheets()).pages);
    for (const { start, stop, face, line, layer, guideFrom } of report.strokes) {
      const length = Math.hypot(face.to.x - face.from.x, face.to.y - face.from.y);
      const along = { x: (face.to.x - face.from.x) / length, y: (face.to.y - face.from.y) / length };
      const u = (p: { x: number; y: number }) => (p.x - face.from.x) * along.x + (p.y - face.from.y) * along.y;
      // Where the back corner lies beyond the face corner, in the fallout, the stroke runs on to it.
      const on = guideFrom === 'far' ? [0, 0] : [Math.max(0, -u(line.from)), Math.max(0, u(line.to) - length)];
      const [before, past] = [-u(start) - on[0]!, u(stop) - length - on[1]!];
      if (Math.max(...on) > 0.005) expect(words).toContain('Where the mat points into the opening, up to ');
      const say = (mm: number, outside: string, within: string) =>
        `${small(Math.abs(mm))} ${mm > 0 ? outside : within} it`;
      expect(words).toContain(`start ${say(before, 'before', 'after')}, stop ${say(past, 'past', 'before')}`);
      if (new Set(report.layers.map(({ thickness }) => thickness)).size > 1)
        expect(words).toContain(`${small(report.layers[layer - 1]!.thickness)} board: start`);
    }
    expect(words.includes('NOT CALIBRATED')).toBe(!report.bench.calibrated);
  });

  it('expects of the finished mat what check says', async () => {
    const words = wordsOf((await sheets()).pages);
    const list = checks(mat, job);
    const off = job.units === 'in' ? 25.4 / 128 + 1e-6 : 0.0501;
    for (const { expected, lengths, what } of list) {
      for (const part of expected.split(' ')) expect(words).toContain(part);
      const printed = lengthsIn(expected);
      for (const mm of printed) {
        const slack = what.startsWith('Diagonals') ? job.bench.graduation / 2 + 1e-6 : off;
        expect(lengths.some((length) => near(length, mm, slack))).toBe(true);
      }
    }
    const boxes = report.openings.flatMap(({ sight, layers }) => [sight, layers[0]!.face]);
    for (const { width, height } of boxes)
      expect(list.some(({ lengths: [w, h] }) => near(w!, width) && near(h!, height))).toBe(true);
    report.layers.slice(1).forEach((layer, i) => {
      const { left } = report.openings[0]!.layers[i + 1]!.reveal;
      const rows = list.filter(({ what }) => what.startsWith('Reveal'));
      expect(rows.some(({ lengths }) => lengths.some((length) => near(length, left)))).toBe(true);
      expect(layer.name).toBe(`under mat ${i + 1}`);
    });
  });

  it('takes one page, two with more than ten settings', async () => {
    const { record } = await sheets();
    const settings = record[0]!.layers.reduce((sum, layer) => sum + layer.settings.length, 0);
    for (const paper of ['letter', 'a4']) {
      const { pages } = await readSheets('ticket', [solved], { paper });
      expect(pages.length).toBeLessThanOrEqual(settings > 10 ? 2 : 1);
    }
  });
});

describe('the words of the ticket', () => {
  const sample = (name: string) => solvedSample(SAMPLES.find((each) => each.name === name)!);

  it('gives the diagonals of published sizes (Mainwaring, MATTING.TXT, squareness by the diagonals)', () => {
    expect(diagonal({ width: 11, height: 14 })).toBeCloseTo(17.80449, 5);
    expect(diagonal({ width: 16, height: 20 })).toBeCloseTo(25.6125, 5);
    const off = Math.hypot(400 + 1, 500) - Math.hypot(400 - 1, 500);
    expect(off).toBeCloseTo(1.2494, 3);
  });

  it('hinges along the long edge, two or more T-hinges under the mat, V-hinges for floats (LOC; Jackson; NEDCC 7.4)', async () => {
    const heron = wordsOf((await readSheets('ticket', [sample('example-heron')])).pages);
    expect(heron).toContain('along the left edge');
    expect(heron).toMatch(/2 or more T-hinges at its top,? under the mat/);
    expect(heron).not.toContain('V-hinges');
    const float = wordsOf((await readSheets('ticket', [sample('template-float')])).pages);
    expect(float).toContain('V-hinges behind a floated work');
    expect(float).not.toContain('T-hinges');
  });

  it('says what board is good for what, by its maker’s statement (LOC; NPS Conserve O Gram 13/4)', async () => {
    const words = wordsOf((await readSheets('ticket', [sample('example-heron')])).pages);
    expect(words).toContain('no lignin; pH 7 for photographs, 8–8.5 for other paper');
    expect(words).not.toMatch(/archival/i);
  });

  it('has own steps for a reverse bevel, a thick board and a groove', async () => {
    const words = wordsOf((await readSheets('ticket', [sample('reverse, thick, apart')])).pages);
    expect(words).toContain('Reverse bevel: lay the FAR edge on the guide');
    expect(words).toContain(
      'two passes at each setting: all its sides at a depth of 1.55 mm (left box), then all again at 3.1 mm',
    );
    // 1.5 mm wide at 45°: half of it deep; 12 mm outside an opening whose border is 90 mm.
    expect(words).toMatch(/V-groove all round, 12 mm outside .* 0\.75 mm deep/);
    expect(words).toContain('× 3');
  });

  it('gives the way to stack with the numbers of the job', async () => {
    const together = wordsOf((await readSheets('ticket', [sample('example-heron')])).pages);
    expect(together).toContain('its fallout back in place: the slip sheet');
    expect(together).toContain('15¾ × 19¾ in');
    expect(together).toContain('⅛ in short of every edge');
    expect(together).toContain('¼ in all round');
    const apart = wordsOf((await readSheets('ticket', [sample('reverse, thick, apart')])).pages);
    expect(apart).toContain('Put the mats together');
    expect(apart).toContain('reveal 9 mm all round');
    expect(apart).not.toContain('fallout back');
    const deeper = wordsOf((await readSheets('ticket', [sample('scant and full')])).pages);
    expect(deeper).toContain('all its sides at a depth of 0.055 in (left box), then all again at 0.11 in');
  });

  it('adds up the rebate and the moulding', () => {
    const { mat, job } = sample('reverse, thick, apart');
    const rows = materialRows(mat, job);
    const said = (name: string) => rows.find((row) => row.name === name)!.value;
    expect(said('Rebate')).toContain(`needs ${2 + 3.1 + 1.4 + 0.4 + 3} mm`);
    expect(said('Rebate')).toContain('the frame has 15 mm');
    // The rebate is the mat and its clearance; a face of 22 less a lip of 6 stands outside it on either side.
    expect(chopSizes(mat, job)).toEqual({
      rebate: { width: 403, height: 503 },
      long: [403 + 32, 503 + 32],
      running: 2 * (435 + 535),
    });
    expect(said('Moulding')).toContain('2 × 435 mm and 2 × 535 mm');
  });

  it('gives glazing, rebate and moulding by the size that the mat came off the cutter with', () => {
    const text = `units: mm
mat: {frame: {inside: 403 x 503, clearance: 3, lip: 6, width: 22}}
openings: [{artwork: 230 x 300}]
asCut: {outer: 396 x 500}
`;
    const solved = solveJob(text, { fonts: FONTS });
    if (!solved.ok) throw new Error('no good job');
    const { mat, job } = solved.value;
    expect(chopSizes(mat, job)!.rebate).toEqual({ width: 399, height: 503 });
    const said = Object.fromEntries(materialRows(mat, job).map(({ name, value }) => [name, value]));
    expect(said.Moulding).toContain('399 × 503 mm in the rebate');
    expect(said.Glazing).toContain('396 × 500 mm');
  });
});
