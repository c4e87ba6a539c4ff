import { describe, expect, it } from 'vitest';
import { openPdf, type Raster, renderSvg } from '../../src/dev/render.ts';
import { solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { type MadeProof, proofOf } from './proofs.ts';

const DPI = 300;
const PX = DPI / 25.4;

const shop = `
units: mm
boards:
  red: {thickness: 1.4, colour: "#c81e28"}
  green: {thickness: 1.5, colour: "#1e9632"}
  blue: {thickness: 3, colour: "#1e3cb4"}
  dark: {thickness: 3, colour: "#30343a"}
mouldings: {plain: {lip: 6, width: 24, colour: "#7a4a1e"}}
`;

/** Jobs whose boards no eye takes for one another; layers are named by their boards. */
const JOBS: readonly (readonly [name: string, job: string, boards: readonly string[]])[] = [
  [
    'two layers in a frame',
    'units: mm\nmat: {frame: {nominal: 300 x 400, moulding: plain}, layers: [{board: red}, {board: green, reveal: 12}]}\nopenings: [{size: 160 x 220}]\n',
    ['#c81e28', '#1e9632'],
  ],
  [
    'three layers, lopsided, unframed',
    'units: mm\nmat: {border: {top: 61, right: 47, bottom: 89, left: 33}, layers: [{board: red}, {board: green, reveal: 9}, {board: blue, reveal: 14, bevel: 60}]}\nopenings: [{size: 180 x 240}]\n',
    ['#c81e28', '#1e9632', '#1e3cb4'],
  ],
  [
    'a reverse bevel above',
    'units: mm\nmat: {border: 50, layers: [{board: red, bevel: {angle: 45, reverse: true}}, {board: green, reveal: 10}]}\nopenings: [{size: 150 x 200}]\n',
    ['#c81e28', '#1e9632'],
  ],
];

/** A mat in its rebate, where nothing is said and the job is in mm. */
const PLAY = 3;

interface Run {
  readonly colour: string;
  readonly from: number;
  /** Behind its last pixel. */
  readonly to: number;
}

const hex = ({ rgba, width }: Raster, x: number, y: number): string => {
  const at = (y * width + x) * 4;
  return `#${[0, 1, 2].map((k) => rgba[at + k]!.toString(16).padStart(2, '0')).join('')}`;
};

/** Stretches of one colour along a row (or a column) of pixels. */
function runs(raster: Raster, across: boolean, at: number): readonly Run[] {
  const made: { colour: string; from: number; to: number }[] = [];
  for (let i = 0; i < (across ? raster.width : raster.height); i++) {
    const colour = across ? hex(raster, i, at) : hex(raster, at, i);
    const last = made.at(-1);
    if (last?.colour === colour) last.to = i + 1;
    else made.push({ colour, from: i, to: i + 1 });
  }
  return made;
}

/** Where a stretch really ends: in the middle of the pixels that an edge (softened, or drawn as a hairline) mixes. */
function edges(all: readonly Run[], run: Run): Run {
  const at = all.indexOf(run);
  const mixed = (step: 1 | -1): number => {
    let count = 0;
    for (let i = at + step; count < 2; i += step) {
      const next = all[i];
      if (next === undefined || next.to - next.from > 2) break;
      count += next.to - next.from;
    }
    return Math.min(2, count);
  };
  return { colour: run.colour, from: run.from - mixed(-1) / 2, to: run.to + mixed(1) / 2 };
}

/** The longest stretches of a colour, in their order. */
const longest = (all: readonly Run[], colour: string, count: number): readonly Run[] =>
  all
    .filter((run) => run.colour === colour)
    .sort((a, b) => b.to - b.from - (a.to - a.from))
    .slice(0, count)
    .sort((a, b) => a.from - b.from)
    .map((run) => edges(all, run));

const isGrey = (colour: string): boolean => {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)) as [number, number, number];
  return Math.max(r, g, b) - Math.min(r, g, b) < 12;
};
const brightness = (colour: string): number =>
  [1, 3, 5].reduce((sum, at) => sum + Number.parseInt(colour.slice(at, at + 2), 16), 0);

async function rendered(made: MadeProof): Promise<Raster> {
  const pdf = await openPdf(made.pdf);
  try {
    return await pdf.render(0, DPI);
  } finally {
    pdf.close();
  }
}

/** Where the piece lies is found by its boards alone: the middle of what is not white. */
function middleOf(raster: Raster, boards: readonly string[]): { readonly x: number; readonly y: number } {
  const own = new Set(boards);
  let [x0, x1, y0, y1] = [raster.width, 0, raster.height, 0];
  for (let y = 0; y < raster.height; y += 3) {
    for (let x = 0; x < raster.width; x += 3) {
      if (!own.has(hex(raster, x, y))) continue;
      // A chip of the colour beside a name is small, and further down.
      if (y > raster.height * 0.72) continue;
      [x0, x1, y0, y1] = [Math.min(x0, x), Math.max(x1, x), Math.min(y0, y), Math.max(y1, y)];
    }
  }
  return { x: Math.round((x0 + x1) / 2), y: Math.round((y0 + y1) / 2) };
}

describe.each(JOBS)('%s, measured in the rendered picture', async (_, job, boards) => {
  const made = await proofOf({ job, file: 'job.yaml', shop });
  const raster = await rendered(made);
  const { report } = made;
  const opening = report.openings[0]!;
  const px = PX / report.proof!.scale;
  const top = boards[0]!;
  const middle = middleOf(raster, boards);
  const within = (measured: number, wanted: number): void => {
    expect(Math.abs(measured - wanted), `${measured} px, not ${wanted.toFixed(2)}`).toBeLessThanOrEqual(1);
  };

  for (const across of [true, false]) {
    const [before, after, size] = across
      ? (['left', 'right', 'width'] as const)
      : (['top', 'bottom', 'height'] as const);

    it(`${size}: borders, openings and strips are right within a pixel, in the boards’ own colours`, () => {
      const line = runs(raster, across, across ? middle.y : middle.x);
      const [first, second] = longest(line, top, 2);
      within(second!.from - first!.to, opening.layers[0]!.face[size] * px);
      // The frame's lip throws a shadow along the top and the left only.
      // In the middle of its rebate half of the mat's play shows beside what the lip leaves.
      const play = report.borderShown[after] === report.border[after] ? 0 : PLAY / 2;
      within(second!.to - second!.from, ((report.borderShown[after] ?? 0) + play) * px);
      if (report.borderShown[before] === report.border[before]) {
        within(first!.to - first!.from, report.border[before] * px);
      }
      report.layers.forEach(({ bevel, setback }, k) => {
        const [near, far] = longest(line, boards[k]!, 2);
        const face = opening.layers[k]!.face[size];
        within(far!.from - near!.to, face * px);
        if (k === 0) return;
        within(near!.to - near!.from, opening.layers[k]!.strip[before] * px);
        within(far!.to - far!.from, opening.layers[k]!.strip[after] * px);
        // What is between two boards is the slope of the upper one: as wide as its setback.
        const above = longest(line, boards[k - 1]!, 2);
        const hidden = report.layers[k - 1]!.bevel.reverse ? 0 : report.layers[k - 1]!.setback;
        within(near!.from - above[0]!.to, hidden * px);
        expect([bevel.angle > 0, setback >= 0]).toEqual([true, true]);
      });
    });
  }

  it('the outside is as large as it says', () => {
    const line = runs(raster, true, middle.y);
    const [, second] = longest(line, top, 2);
    const [first] = longest(line, top, 2);
    const solved = solveJob(job, { fonts: FONTS, shop: { text: shop, file: 'shop.yaml' } });
    if (!solved.ok) throw new Error('not solved');
    const width = solved.value.job.mat.frame?.width;
    if (width === undefined) {
      within(second!.to - first!.from, report.outer.width * px);
      return;
    }
    // From the mat outwards, until the shadow on the paper.
    let end = Math.ceil(second!.to);
    while (!isGrey(hex(raster, end, middle.y))) end++;
    within(end - 0.5 - second!.to, width * px);
  });

  it('slopes at the bottom and the right are bright, those at the top and the left dark', () => {
    const down = runs(raster, false, middle.x);
    const right = runs(raster, true, middle.y);
    if (report.layers[0]!.bevel.reverse) return;
    const slopes = [down, right].flatMap((line) => {
      const [near, far] = longest(line, top, 2);
      const at = (run: Run): string => run.colour;
      const inside = (from: number, to: number): string =>
        at(line.find((run) => run.from <= from + (to - from) / 2 && run.to > from + (to - from) / 2)!);
      const wide = report.layers[0]!.setback * px;
      return [inside(near!.to, near!.to + wide), inside(far!.from - wide, far!.from)].map(brightness);
    });
    const [topSide, bottomSide, leftSide, rightSide] = slopes as [number, number, number, number];
    expect(bottomSide).toBeGreaterThan(rightSide);
    expect(rightSide).toBeGreaterThan(leftSide);
    expect(leftSide).toBeGreaterThan(topSide);
    // The core is white: the bright ones nearly are.
    expect(bottomSide).toBeGreaterThan(3 * 235);
  });

  it('the SVG shows the same', async () => {
    const svg = (await proofOf({ job, file: 'job.yaml', shop }, { format: ['pdf', 'svg'] })).files.find(
      ({ name }) => name === 'proof.svg',
    )!;
    const same = await renderSvg(new TextDecoder().decode(svg.bytes), DPI);
    expect([same.width, same.height].map((n, i) => Math.abs(n - [raster.width, raster.height][i]!) <= 1)).toEqual([
      true,
      true,
    ]);
    const [a, b] = [raster, same].map((one) => longest(runs(one, true, middle.y), top, 2));
    a!.forEach((run, i) => {
      within(b![i]!.from, run.from);
      within(b![i]!.to, run.to);
    });
  });
});

describe('the picture', () => {
  it('stands where the artwork does, cropped by the mat, in its own colours', async () => {
    const sharp = (await import('sharp')).default;
    // Four quarters of one colour each, upright only by its orientation.
    const quarters = ['#d01010', '#10d010', '#1010d0', '#d0d010'];
    const [w, h] = [300, 400];
    const tiles = await Promise.all(
      quarters.map((background) =>
        sharp({ create: { width: w / 2, height: h / 2, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    const upright = await sharp({ create: { width: w, height: h, channels: 3, background: '#000000' } })
      .composite(tiles.map((input, i) => ({ input, left: (i % 2) * (w / 2), top: Math.floor(i / 2) * (h / 2) })))
      .png()
      .toBuffer();
    const turned = await sharp(upright)
      .rotate(-90)
      .withMetadata({ orientation: 6 })
      .jpeg({ quality: 100, chromaSubsampling: '4:4:4' })
      .toBuffer();
    const job =
      'units: mm\nmat: {border: 60, layers: [{board: dark}]}\nopenings: [{artwork: 300 x 400, overlap: 5, picture: quarters.jpg}]\n';
    const source = { job, file: 'job.yaml', shop };
    const made = await proofOf(source, { pictures: async () => ({ bytes: new Uint8Array(turned) }) });
    const raster = await rendered(made);
    const line = longest(runs(raster, true, middleOf(raster, ['#30343a']).y), '#30343a', 2);
    const column = middleOf(raster, ['#30343a']);
    const px = PX / made.report.proof!.scale;
    const found = [
      [-60, -80],
      [60, -80],
      [-60, 80],
      [60, 80],
    ].map(([dx, dy]) => hex(raster, Math.round(column.x + dx! * px), Math.round(column.y + dy! * px)));
    found.forEach((colour, i) => {
      const apart = [1, 3, 5].map((at) =>
        Math.abs(Number.parseInt(colour.slice(at, at + 2), 16) - Number.parseInt(quarters[i]!.slice(at, at + 2), 16)),
      );
      expect(Math.max(...apart), `${colour} for ${quarters[i]}`).toBeLessThanOrEqual(6);
    });
    // Seen: 300 less 5 on either side and the slope of a board of 3 mm.
    expect(line).toHaveLength(2);
    expect(Math.abs(line[1]!.from - line[0]!.to - 290 * px)).toBeLessThanOrEqual(1);
    expect(made.warnings.map(({ code }) => code)).toEqual([]);
  });

  it('of other proportions is cut evenly, with a warning', async () => {
    const sharp = (await import('sharp')).default;
    const wide = await sharp({ create: { width: 400, height: 300, channels: 3, background: '#10d010' } })
      .png()
      .toBuffer();
    const job = 'units: mm\nmat: {border: 60}\nopenings: [{artwork: 300 x 400, picture: wide.png}]\n';
    const made = await proofOf({ job, file: 'job.yaml' }, { pictures: async () => ({ bytes: new Uint8Array(wide) }) });
    expect(made.warnings.map(({ code, path }) => [code, path])).toContainEqual([
      'picture-proportions',
      ['openings', 0, 'picture'],
    ]);
  });

  it('keeps the PDF small, however large it is', async () => {
    const sharp = (await import('sharp')).default;
    const noise = await sharp({
      create: {
        width: 6000,
        height: 8000,
        channels: 3,
        background: '#ffffff',
        noise: { type: 'gaussian', mean: 128, sigma: 40 },
      },
    })
      .jpeg({ quality: 60 })
      .toBuffer();
    const job = 'units: mm\nmat: {border: 60}\nopenings: [{artwork: 300 x 400, picture: noise.jpg}]\n';
    const made = await proofOf({ job, file: 'job.yaml' }, { pictures: async () => ({ bytes: new Uint8Array(noise) }) });
    expect(noise.length).toBeGreaterThan(3e6);
    expect(made.pdf.length).toBeLessThan(1.2e6);
  }, 60_000);
});
