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
        overlap: { ...all(near(6.35)), written: 'once' },
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
        pin: false,
        strokesPerBlade: 64,
        start: [{ offset: 1.2 }],
        stop: [{ offset: -0.4 }],
        overrun: 0.25,
        calibrated: true,
      },
      guide: { graduation: near(1.5875), longest: near(304.8), setAt: 1.4, a: 0, b: 1 },
      graduation: near(1.5875),
      snap: true,
      stack: 'together',
      mark: 'pattern',
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
          overlap: { ...all(near(3.175)), written: 'once' },
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
          pin: false,
          strokesPerBlade: 64,
          start: [{ offset: 0 }],
          stop: [{ offset: 0 }],
          overrun: 0.25,
          calibrated: false,
        },
        guide: { graduation: near(inch(1 / 16)), a: 0, b: 1 },
        graduation: near(inch(1 / 16)),
        snap: false,
        stack: 'together',
        mark: 'pattern',
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
    expect(warned(text('11.9 mm'))).toStrictEqual([]);
    expect(warned(text('11.8 mm'))).toMatchObject([
      {
        code: 'rebate-shallow',
        line: 2,
        column: 14,
        message:
          'the rebate is 11.8 mm deep, but glazing 2 mm + mats 1.4 mm + spacer 3 mm + art 0.6 mm + backing 5 mm = 12 mm must lie in it',
        hint: expect.stringContaining('0.2 mm proud'),
      },
    ]);
  });
});
