import { describe, expect, it } from 'vitest';
import { mmFromInches } from '../../src/units/units.ts';
import { accepted, HERON, jobOf, read, SHOP, SMALL } from './texts.ts';

const inch = mmFromInches;
const all = (mm: number) => ({ top: mm, right: mm, bottom: mm, left: mm });
const near = (mm: number) => expect.closeTo(mm, 9);

describe('the sample job with its shop', () => {
  const { job } = accepted(read(HERON, SHOP));

  it('holds every size in mm', () => {
    expect(job.title).toBe('Heron, linocut');
    expect(job.customer).toBe('Saltmarsh Print Room');
    expect(job.units).toBe('in');
    expect(job.count).toBe(1);
    expect(job.mat.outer).toStrictEqual({ width: near(406.4), height: near(508) });
    expect(job.mat.border).toStrictEqual({});
    expect(job.mat.weighting).toStrictEqual({ kind: 'add', length: near(12.7) });
    expect(job.mat.frame).toBeUndefined();
    expect(job.openings).toStrictEqual([
      {
        shape: 'rectangle',
        artwork: { width: near(266.7), height: near(342.9) },
        overlap: all(near(6.35)),
        measure: 'face',
      },
    ]);
  });

  it('has its boards, head and guide from the shop', () => {
    const [top, under] = job.mat.layers;
    expect(top).toStrictEqual({
      board: {
        id: 'bone-4',
        name: 'bone-4',
        thickness: 1.4,
        colour: '#efe9dc',
        core: 'white',
        sheets: [{ width: near(812.8), height: near(1016) }],
        price: 9.5,
        directional: false,
      },
      bevel: { angle: 45, reverse: false },
      trimBack: 0,
    });
    expect(under).toStrictEqual({
      board: {
        id: 'slate-4',
        name: 'Slate',
        thickness: 1.5,
        plies: 4,
        colour: '#5c6670',
        core: 'black',
        sheets: [],
        directional: true,
      },
      bevel: { angle: 45, reverse: false },
      reveal: near(6.35),
      trimBack: near(3.175),
    });
    expect(job.bench).toStrictEqual({
      head: {
        id: 'pull-45',
        bevel: 45,
        opening: 'left',
        straightedge: 0,
        straightedgeOn: 'border',
        start: [{ offset: 1.2 }],
        stop: [{ offset: -0.4 }],
        overrun: 0.25,
        calibrated: true,
      },
      guide: { graduation: near(1.5875), longest: near(304.8), setAt: 1.4, a: 0, b: 1 },
      graduation: near(1.5875),
      snap: true,
      stack: 'together',
    });
    expect(job.print).toStrictEqual({
      paper: 'letter',
      margin: all(near(6.35)),
      lap: near(12.7),
      join: 'lap',
      transfer: 'prick',
      paperThickness: 0.1,
    });
  });
});

describe('a job of five lines', () => {
  it('has a sound default for everything else, in inches', () => {
    expect(jobOf(SMALL)).toStrictEqual({
      title: 'heron',
      units: 'in',
      mat: {
        outer: { width: near(203.2), height: near(254) },
        border: {},
        layers: [
          {
            board: {
              id: 'default-4-ply',
              name: '4-ply board',
              thickness: 1.4,
              plies: 4,
              colour: '#f4f1e8',
              core: 'white',
              sheets: [],
              directional: false,
            },
            bevel: { angle: 45, reverse: false },
            trimBack: 0,
          },
        ],
      },
      openings: [
        {
          shape: 'rectangle',
          artwork: { width: near(127), height: near(177.8) },
          overlap: all(near(3.175)),
          measure: 'face',
        },
      ],
      count: 1,
      bench: {
        head: {
          id: 'default',
          bevel: 45,
          opening: 'left',
          straightedge: 0,
          straightedgeOn: 'border',
          start: [{ offset: 0 }],
          stop: [{ offset: 0 }],
          overrun: 0.25,
          calibrated: false,
        },
        guide: { graduation: near(inch(1 / 16)), a: 0, b: 1 },
        graduation: near(inch(1 / 16)),
        snap: false,
        stack: 'together',
      },
      print: {
        paper: 'letter',
        margin: all(near(inch(1 / 4))),
        lap: near(inch(1 / 2)),
        join: 'lap',
        transfer: 'prick',
        paperThickness: 0.1,
      },
    });
  });

  it.each(['mm', 'cm'])('takes round metric lengths where units are %s', (units) => {
    const job = jobOf(`units: ${units}\nmat:\n  frame: {inside: 300 x 400 mm}\n  layers: [{}, {}]\nopenings: [{}]\n`);
    expect(job.bench.graduation).toBe(1);
    expect(job.bench.guide).toStrictEqual({ graduation: 1, a: 0, b: 1 });
    expect(job.print).toMatchObject({ paper: 'a4', margin: all(6), lap: 12 });
    expect(job.mat.frame).toStrictEqual({ inside: { width: 300, height: 400 }, clearance: 3, lip: 0 });
    expect(job.mat.layers.map((layer) => layer.trimBack)).toStrictEqual([0, 3]);
  });

  it('trims back 1/8 in where under mats are cut together, nothing where they are cut apart', () => {
    const layers = 'mat: {layers: [{}, {}, {}]}\nopenings: [{}]\n';
    expect(jobOf(layers).mat.layers.map((layer) => layer.trimBack)).toStrictEqual([0, near(3.175), near(3.175)]);
    expect(jobOf(`${layers}bench: {stack: apart}\n`).mat.layers.map((layer) => layer.trimBack)).toStrictEqual([
      0, 0, 0,
    ]);
  });

  it('is called after its file, which need not be pretty', () => {
    const title = (file: string) => jobOf('openings: [{}]', undefined, file).title;
    expect(title('a/b/heron.yaml')).toBe('heron');
    expect(title('C:\\jobs\\heron.YML')).toBe('heron');
    expect(title('heron.final.yaml')).toBe('heron.final');
    expect(title('heron')).toBe('heron');
    expect(title('.yaml')).toBe('job');
    expect(title('x\u0007y\u202e.yaml')).toBe('x y');
    expect(title(`${'long'.repeat(50)}.yaml`)).toHaveLength(100);
  });
});

describe('every key of a job', () => {
  const mat = (text: string) => jobOf(`mat: ${text}\nopenings: [{}]\n`).mat;
  const opening = (text: string) => jobOf(`openings: [${text}]\n`).openings[0]!;
  const bench = (text: string, shop?: string) => jobOf(`openings: [{}]\nbench: ${text}\n`, shop).bench;
  const print = (text: string, shop?: string) => jobOf(`openings: [{}]\nprint: ${text}\n`, shop).print;

  it('units hold for bare numbers, a text may carry its own', () => {
    const job = jobOf('units: cm\nmat: {outer: 40 x 50, border: 3 in}\nopenings: [{size: [20, "300 mm"]}]\n');
    expect(job.units).toBe('cm');
    expect(job.mat.outer).toStrictEqual({ width: 400, height: 500 });
    expect(job.mat.border).toStrictEqual(all(near(76.2)));
    expect(job.openings[0]!.size).toStrictEqual({ width: 200, height: 300 });
  });

  it('mat.frame: inside or nominal, clearance, lip and what lies in the rebate', () => {
    expect(mat('{frame: {inside: 16 x 20, clearance: 1/8, lip: 1/4}}').frame).toStrictEqual({
      inside: { width: near(406.4), height: near(508) },
      clearance: near(3.175),
      lip: near(6.35),
    });
    expect(
      mat(
        '{frame: {nominal: 16 x 20, depth: 3/4, glazing: {thickness: 2 mm, name: Glass}, spacer: 0, art: 0.5 mm, backing: {thickness: 5 mm}}}',
      ).frame,
    ).toStrictEqual({
      nominal: { width: near(406.4), height: near(508) },
      clearance: near(3.175),
      lip: 0,
      depth: near(19.05),
      glazing: { id: 'Glass', name: 'Glass', thickness: 2 },
      spacer: 0,
      art: 0.5,
      backing: { id: 'backing', name: 'backing', thickness: 5 },
    });
  });

  it('mat.border: one length, or by side', () => {
    expect(mat('{border: 3}').border).toStrictEqual(all(near(76.2)));
    expect(mat('{border: {top: 3, bottom: 3 1/2, sides: 2 3/4}}').border).toStrictEqual({
      top: near(76.2),
      bottom: near(88.9),
      left: near(69.85),
      right: near(69.85),
    });
    expect(mat('{border: {left: 2, right: 3}}').border).toStrictEqual({ left: near(50.8), right: near(76.2) });
    expect(mat('{border: {}}').border).toStrictEqual({});
  });

  it('mat.weighting in its four forms', () => {
    expect(mat('{weighting: none}').weighting).toStrictEqual({ kind: 'none' });
    expect(mat('{weighting: diagonal}').weighting).toStrictEqual({ kind: 'diagonal' });
    expect(mat('{weighting: {add: 0}}').weighting).toStrictEqual({ kind: 'add', length: 0 });
    expect(mat('{weighting: {ratio: 4/3}}').weighting).toStrictEqual({ kind: 'ratio', ratio: near(4 / 3) });
    expect(mat('{weighting: {ratio: "4:3"}}').weighting).toStrictEqual({ kind: 'ratio', ratio: near(4 / 3) });
    expect(mat('{weighting: {ratio: 1.25}}').weighting).toStrictEqual({ kind: 'ratio', ratio: 1.25 });
  });

  it('mat.layers: bevels and boards in place', () => {
    const bevel = (text: string) => mat(`{layers: [{bevel: ${text}}]}`).layers[0]!.bevel;
    expect(bevel('60')).toStrictEqual({ angle: 60, reverse: false });
    expect(bevel('90')).toStrictEqual({ angle: 90, reverse: false });
    expect(bevel('{angle: 45, reverse: true}')).toStrictEqual({ angle: 45, reverse: true });
    expect(bevel('{reverse: true}')).toStrictEqual({ angle: 45, reverse: true });
    const board = mat('{layers: [{board: {thickness: 0.06, colour: "#ABC", name: Chalk, plies: 4, core: cream}}]}');
    expect(board.layers[0]!.board).toStrictEqual({
      id: 'Chalk',
      name: 'Chalk',
      thickness: near(1.524),
      plies: 4,
      colour: '#aabbcc',
      core: 'cream',
      sheets: [],
      directional: false,
    });
    expect(mat('{layers: [{}, {board: {thickness: 1 mm}}]}').layers[1]!.board).toMatchObject({ id: 'board 2' });
  });

  it('openings: artwork, size, overlap, float, measure, name', () => {
    expect(opening('{name: Heron, size: 10 x 13, measure: sight}')).toStrictEqual({
      name: 'Heron',
      shape: 'rectangle',
      size: { width: near(254), height: near(330.2) },
      overlap: {},
      measure: 'sight',
    });
    expect(opening('{artwork: 10 x 13, float: 1/4}')).toStrictEqual({
      shape: 'rectangle',
      artwork: { width: near(254), height: near(330.2) },
      overlap: {},
      float: all(near(6.35)),
      measure: 'sight',
    });
    expect(opening('{artwork: 10 x 13, float: {bottom: 1/2}, measure: face}')).toMatchObject({
      float: { bottom: near(12.7) },
      measure: 'face',
    });
    const both = opening('{artwork: 10 x 13, size: 9 1/2 x 12 1/2, overlap: {sides: 1/8, top: 1/4}}');
    expect(both.overlap).toStrictEqual({ left: near(3.175), right: near(3.175), top: near(6.35) });
  });

  it('bench: graduation from the guide, stack, snap, hinge', () => {
    expect(bench('{graduation: 1/8, snap: true, stack: apart, hinge: top}')).toMatchObject({
      graduation: near(3.175),
      snap: true,
      stack: 'apart',
      hinge: 'top',
    });
    expect(bench('{}', 'guide: {graduation: 1/32}').graduation).toBeCloseTo(0.79375, 9);
    expect('hinge' in bench('{}')).toBe(false);
  });

  it('print: every key', () => {
    expect(
      print('{paper: A3, margin: {top: 1/2}, lap: 0, join: butt, transfer: cut-through, paperThickness: 0.2 mm}'),
    ).toStrictEqual({
      paper: 'A3',
      margin: { ...all(near(6.35)), top: near(12.7) },
      lap: 0,
      join: 'butt',
      transfer: 'cut-through',
      paperThickness: 0.2,
    });
    const shop = 'printers: {office: {x: 0.99, margin: {top: 1/2, sides: 1/8}}}\npapers: {banner: {size: 13 x 40}}';
    expect(print('{paper: banner, printer: office}', shop)).toMatchObject({
      paper: 'banner',
      margin: { top: near(12.7), right: near(6.35), bottom: near(6.35), left: near(6.35) },
      printer: { id: 'office', x: 0.99, y: 1, margin: { top: near(12.7), right: near(3.175), bottom: 0 } },
    });
  });

  it.each(['letter', 'a4', 'fit', 'roll:24in', '13 x 19', '300 x 450 mm', 'ARCH C'])('print.paper: %s', (paper) => {
    expect(print(`{paper: "${paper}"}`).paper).toBe(paper);
  });

  it('count and customer', () => {
    const job = jobOf('count: 40\ncustomer: " Saltmarsh "\nopenings: [{}]\n');
    expect(job).toMatchObject({ count: 40, customer: 'Saltmarsh' });
  });
});

describe('warnings', () => {
  const warned = (text: string, shop?: string) => {
    const result = read(text, shop);
    accepted(result);
    return result.ok ? result.warnings : [];
  };

  it('tells where the head that is named has another bevel than a layer', () => {
    const text = 'mat:\n  layers:\n    - {}\n    - {bevel: 60}\nopenings: [{}]\nbench: {head: pull-45}\n';
    expect(warned(text, SHOP)).toMatchObject([
      { severity: 'warning', code: 'bevel-not-head', path: ['mat', 'layers', 1, 'bevel'], line: 4, column: 15 },
    ]);
    expect(warned(text.replace('head: pull-45', ''), SHOP)).toStrictEqual([]);
    const steep = 'heads: {steep: {bevel: 60}}';
    const named = 'openings: [{}]\nbench: {head: steep}\n';
    expect(jobOf(named, steep).mat.layers[0]!.bevel.angle).toBe(60);
    expect(warned(named, steep)).toStrictEqual([]);
  });

  it('tells where more must lie in the rebate than it is deep', () => {
    const parts = 'glazing: {thickness: 2 mm}, spacer: 3 mm, art: 0.6 mm, backing: {thickness: 5 mm}';
    const text = (depth: string) =>
      `units: mm\nmat: {frame: {inside: 400 x 500, depth: ${depth}, ${parts}}}\nopenings: [{}]\n`;
    expect(warned(text('12 mm'))).toStrictEqual([]);
    expect(warned(text('11.9 mm'))).toMatchObject([
      {
        code: 'rebate-shallow',
        line: 2,
        column: 14,
        message:
          'the rebate is 11.9 mm deep, but glazing 2 mm + mats 1.4 mm + spacer 3 mm + art 0.6 mm + backing 5 mm = 12 mm must lie in it',
        hint: expect.stringContaining('0.1 mm proud'),
      },
    ]);
  });
});
