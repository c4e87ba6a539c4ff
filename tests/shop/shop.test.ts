import { describe, expect, it } from 'vitest';
import { NO_SHOP } from '../../src/shop/shop.ts';
import { accepted, jobOf, read, refused, SHOP, shopOf } from '../job/texts.ts';

const near = (mm: number) => expect.closeTo(mm, 9);
const shop = (text: string) => accepted(shopOf(text));

describe('a shop', () => {
  it('may be empty: then it is as if there were none', () => {
    for (const text of ['', '# nothing yet\n', '{}', '---\n']) expect(shop(text)).toStrictEqual(NO_SHOP);
    expect(accepted(shopOf(' \n', 'shop.json'))).toStrictEqual(NO_SHOP);
  });

  it('has a name, lines of an address', () => {
    const text = 'shop: {name: Saltmarsh Print Room, address: [3 Quay Lane, Saltmarsh]}\n';
    const whole = { name: 'Saltmarsh Print Room', address: ['3 Quay Lane', 'Saltmarsh'] };
    expect(shop(text).letterhead).toStrictEqual(whole);
    expect(shop('shop: {name: Saltmarsh}\n').letterhead).toStrictEqual({ name: 'Saltmarsh', address: [] });
    expect(NO_SHOP.letterhead).toBeUndefined();
  });

  it('holds boards, heads, guide and printers', () => {
    const { boards, heads, guide, printers } = shop(SHOP);
    expect([...boards.keys()]).toStrictEqual(['bone-4', 'slate-4']);
    expect(boards.get('slate-4')).toMatchObject({ name: 'Slate', thickness: 1.5, core: 'black', directional: true });
    expect(heads.get('pull-45')).toMatchObject({ start: [{ offset: 1.2 }], calibrated: true });
    expect(guide).toStrictEqual({ graduation: near(1.5875), longest: near(304.8), setAt: 1.4, a: 0, b: 1 });
    expect(printers.get('office')).toStrictEqual({
      id: 'office',
      x: 0.9965,
      calibrated: true,
      y: 0.998,
      margin: { top: 0, right: 0, bottom: 0, left: 0 },
    });
  });

  it('has bare numbers in its own units, whatever those of the job are', () => {
    const text = 'units: mm\nboards: {bone-4: {thickness: 1.4, sheets: [800 x 1000, [1000, 1500]]}}\n';
    expect(shop(text).boards.get('bone-4')!.sheets).toStrictEqual([
      { width: 800, height: 1000 },
      { width: 1000, height: 1500 },
    ]);
    const job = jobOf('mat: {outer: 16 x 20, layers: [{board: bone-4}]}\nopenings: [{}]\n', text);
    expect(job.mat.layers[0]!.board.thickness).toBe(1.4);
    expect(job.mat.outer).toStrictEqual({ width: near(406.4), height: near(508) });
  });

  it('leaves its guide to the units of the job where it says nothing of it', () => {
    expect(shop('units: mm\n').guide).toBeUndefined();
    expect(jobOf('openings: [{}]', 'units: mm\n').bench.guide.graduation).toBeCloseTo(1.5875, 9);
    expect(shop('units: mm\nguide: {}\n').guide).toStrictEqual({ graduation: 1, a: 0, b: 1 });
  });

  it('gives heads offsets for each thickness, and what they were calibrated with', () => {
    const { heads } = shop(`units: mm
heads:
  push:
    bevel: 60
    opening: right
    straightedge: 35
    straightedgeOn: opening
    bar: 40
    pin: true
    strokesPerBlade: 40
    scribe: the notch at its front
    start: [{thickness: 1.4, offset: 1.2}, {thickness: 3, offset: 1.6}]
    stop: -0.4
    overrun: 0
    blade: 0.3 mm, fresh
    depth: scratches the slip sheet
    date: 2024-03-01
  half: {start: 1}
`);
    expect(heads.get('push')).toStrictEqual({
      id: 'push',
      bevel: 60,
      opening: 'right',
      straightedge: 35,
      straightedgeOn: 'opening',
      bar: 40,
      pin: true,
      strokesPerBlade: 40,
      scribe: 'the notch at its front',
      start: [
        { thickness: 1.4, offset: 1.2 },
        { thickness: 3, offset: 1.6 },
      ],
      stop: [{ offset: -0.4 }],
      overrun: 0,
      calibrated: true,
      blade: '0.3 mm, fresh',
      depth: 'scratches the slip sheet',
      date: '2024-03-01',
    });
    expect(heads.get('half')!.calibrated).toBe(false);
  });

  it('takes twice the spread of a head for its overrun, unless it wishes one', () => {
    const { heads } = shop(
      'units: mm\nheads: {new: {}, tried: {spread: 0.11}, wished: {spread: 0.11, overrun: 0.4}, dead: {spread: 0}}\n',
    );
    expect([...heads.values()].map((head) => head.overrun)).toEqual([0.25, 0.22, 0.4, 0.01]);
  });

  it('holds papers and the sizes it likes', () => {
    const { papers, sizes } = shop('papers: {banner: {size: 13 x 40}}\nsizes: [11 x 14, 16 x 20]\n');
    expect(papers.get('banner')).toStrictEqual({ width: near(330.2), height: near(1016) });
    expect(sizes).toHaveLength(2);
  });

  it('names things as it likes, even after what every object has', () => {
    const { boards } = shop('boards: {constructor: {thickness: 1 mm}, toString: {}, hasOwnProperty: {}}\n');
    expect([...boards.keys()]).toStrictEqual(['constructor', 'toString', 'hasOwnProperty']);
    expect(refused(read('mat: {layers: [{board: valueOf}]}\nopenings: [{}]\n', SHOP))[0]!.code).toBe('board-unknown');
  });
});

describe('frames', () => {
  const FRAMES = `mouldings:
  ash: {name: Ash, lip: 1/4, depth: 5/8, clearance: 1/16}
frames:
  ash-16x20: {nominal: 16 x 20, moulding: ash, name: "Ash, 16 x 20"}
  odd: {inside: 16 1/8 x 20, lip: 3/8, clearance: 0, depth: 1}
glazing:
  clear: {name: Clear glass, thickness: 2 mm}
backing:
  foam: {thickness: 5 mm}
`;
  const frame = (text: string) => jobOf(`mat: {frame: ${text}}\nopenings: [{}]\n`, FRAMES).mat.frame;

  it('of the shop stand for their size, lip, clearance and depth', () => {
    expect(frame('ash-16x20')).toStrictEqual({
      name: 'Ash, 16 x 20',
      nominal: { width: near(406.4), height: near(508) },
      lip: near(6.35),
      clearance: near(1.5875),
      depth: near(15.875),
    });
    expect(frame('odd')).toStrictEqual({
      name: 'odd',
      inside: { width: near(409.575), height: near(508) },
      lip: near(9.525),
      clearance: 0,
      depth: near(25.4),
    });
  });

  it('of a job overrule what the shop says', () => {
    expect(frame('{ready: ash-16x20, lip: 1/8, glazing: clear, backing: foam}')).toMatchObject({
      lip: near(3.175),
      clearance: near(1.5875),
      glazing: { id: 'clear', name: 'Clear glass', thickness: 2 },
      backing: { id: 'foam', name: 'foam', thickness: 5 },
    });
    expect(frame('{inside: 16 x 20, moulding: ash}')).toMatchObject({ name: 'Ash', lip: near(6.35) });
  });

  it('that the shop does not list are told with the nearest one', () => {
    const wrong = (text: string) => refused(read(`mat: {frame: ${text}}\nopenings: [{}]\n`, FRAMES));
    expect(wrong('ash-16x2')).toMatchObject([
      { code: 'frame-unknown', line: 1, column: 14, hint: expect.stringContaining('did you mean ash-16x20?') },
    ]);
    expect(wrong('{ready: elm, glazing: cleer, backing: fom}').map(({ code, column }) => [code, column])).toStrictEqual(
      [
        ['frame-unknown', 22],
        ['glazing-unknown', 36],
        ['backing-unknown', 52],
      ],
    );
    expect(refused(shopOf('frames: {a: {nominal: 8 x 10, moulding: elm}}'))).toMatchObject([
      { code: 'moulding-unknown', file: 'shop.yaml', line: 1, column: 41 },
    ]);
  });
});

describe('problems of both files', () => {
  it('are told together, each with its file', () => {
    const problems = refused(read('openings: [{}]\ncuont: 2\n', 'boards: {b: {thicknes: 1 mm}}\n'));
    expect(problems.map(({ file, line, column, code }) => [file, line, column, code])).toStrictEqual([
      ['jobs/heron.yaml', 2, 1, 'key-unknown'],
      ['shop.yaml', 1, 14, 'key-unknown'],
    ]);
    expect(refused(read('a: [', 'b: ['))).toHaveLength(2);
  });

  it('of a shop stop the job even where that is sound', () => {
    expect(refused(read('openings: [{}]\n', 'heads: 1\n'))).toMatchObject([{ file: 'shop.yaml', code: 'value-kind' }]);
  });
});
