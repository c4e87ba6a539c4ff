import { describe, expect, it } from 'vitest';
import { run } from './run.ts';

interface Bad {
  readonly what: string;
  readonly job?: string;
  /** What stands under `machines:`. */
  readonly machines?: string;
  readonly args?: readonly string[];
  /** `shop.yaml:2:20`, or `job.yaml`. */
  readonly place: string;
  readonly words: readonly string[];
}

const JOB = `title: Small
units: mm
mat:
  outer: 200 x 300
  layers: [{board: {thickness: 1.5}}]
openings: [{size: 100 x 150}]
`;
const thick = JOB.replace('thickness: 1.5', 'thickness: 3');
const tiny = JOB.replace('100 x 150', '8 x 9').replace('openings: [{', 'openings: [{measure: face, ');
const steep = JOB.replace('{board: {thickness: 1.5}}', '{board: {thickness: 1.5}, bevel: 60}');
const machine = (name: string): readonly string[] => ['--machine', name];

const BAD: readonly Bad[] = [
  {
    what: 'a bed smaller than any board',
    machines: '{m: {bed: 5 x 5}}',
    place: 'shop.yaml:2:21',
    words: ['bed', 'least'],
  },
  {
    what: 'a name that says no kind',
    machines: '{m: {kerf: 0.1}}',
    place: 'shop.yaml:2:15',
    words: ['what it cuts with', 'laser or knife or bevel'],
  },
  { what: 'an unknown kind', machines: '{m: {kind: lazer}}', place: 'shop.yaml:2:22', words: ['did you mean laser'] },
  {
    what: 'an unknown key of a machine',
    machines: '{laser: {kerv: 0.1}}',
    place: 'shop.yaml:2:20',
    words: ['did you mean kerf'],
  },
  {
    what: 'a key of another kind of machine',
    machines: '{laser: {offset: 0.2}}',
    place: 'shop.yaml:2:28',
    words: ['offset is for a drag knife', 'kerf, tabs'],
  },
  { what: 'a kerf wider than any', machines: '{laser: {kerf: 20}}', place: 'shop.yaml:2:26', words: ['too large'] },
  { what: 'a negative offset', machines: '{knife: {offset: -0.2}}', place: 'shop.yaml:2:28', words: ['negative'] },
  { what: 'a decimal comma', machines: '{laser: {kerf: "0,2"}}', place: 'shop.yaml:2:26', words: ['0.2'] },
  { what: 'passes by halves', machines: '{knife: {passes: 1.5}}', place: 'shop.yaml:2:28', words: ['whole number'] },
  {
    what: 'a scale that no machine has',
    machines: '{knife: {scale: {x: 100.4}}}',
    place: 'shop.yaml:2:31',
    words: ['at most 1.1'],
  },
  {
    what: 'a format that is none',
    machines: '{laser: {format: dfx}}',
    place: 'shop.yaml:2:28',
    words: ['did you mean dxf'],
  },
  {
    what: 'a layer that no file can hold',
    machines: '{laser: {operations: {inner: {layer: "cut in"}}}}',
    place: 'shop.yaml:2:48',
    words: ['layer'],
  },
  {
    what: 'notes in the colour of a cut',
    machines: '{laser: {operations: {note: {colour: "#0060c0"}}}}',
    place: 'shop.yaml:2:32',
    words: ['would be cut', 'notes: false'],
  },
  {
    what: 'a pen that no plotter has',
    machines: '{knife: {operations: {inner: {pen: 9}}}}',
    place: 'shop.yaml:2:46',
    words: ['at most 8'],
  },
  {
    what: 'a bed that is too small',
    machines: '{laser: {bed: 250 x 250}}',
    place: 'job.yaml:5:12',
    words: ['50 mm up are missing', 'turning it does not help'],
  },
  {
    what: 'a bed that fits only what is turned',
    machines: '{laser: {bed: 350 x 250}}',
    place: 'job.yaml:5:12',
    words: ['--turn'],
  },
  {
    what: 'a board too thick for the machine',
    job: thick,
    machines: '{knife: {thickest: 2}}',
    place: 'job.yaml:5:20',
    words: ['3 mm thick', 'knife cuts 2 mm at most'],
  },
  {
    what: 'a bevel that a fixed head cannot cut',
    job: steep,
    machines: '{bevel: {bevel: 45}}',
    args: machine('bevel'),
    place: 'job.yaml:5:45',
    words: ['60', '45° and nothing else'],
  },
  {
    what: 'an outside that a fixed head cannot cut',
    machines: '{bevel: {bevel: 45, outside: true}}',
    args: machine('bevel'),
    place: 'job.yaml:1:1',
    words: ['outside: false'],
  },
  {
    what: 'an opening with no room for the knife',
    job: tiny,
    machines: '{knife: {lead: 40, offset: 2}}',
    args: machine('knife'),
    place: 'job.yaml:6:12',
    words: ['too small for the knife', '40 mm'],
  },
  {
    what: 'tabs that find no room',
    job: tiny,
    machines: '{laser: {tabs: {count: 12, width: 4}}}',
    place: 'job.yaml:6:12',
    words: ['12 tabs', 'fewer or narrower'],
  },
  {
    what: 'targets where nothing is left to print on',
    machines: '{knife: {registration: 8, outside: false}}',
    place: 'job.yaml:1:1',
    words: ['trimmed before'],
  },
  {
    what: 'sides too short for the offsets of the head',
    job: tiny,
    machines: '{bevel: {start: -9, stop: 9}}',
    place: 'job.yaml:6:12',
    words: ['too short for the offsets'],
  },
  { what: 'a machine that is none', args: machine('lasr'), place: 'job.yaml:1:1', words: ['did you mean laser'] },
  {
    what: 'no machine, where the shop has several',
    machines: '{laser: {}, knife: {}}',
    place: 'job.yaml:1:1',
    words: ['--machine laser or knife'],
  },
  {
    what: 'a kind that several machines have',
    machines: '{a: {kind: laser}, b: {kind: laser}}',
    args: machine('laser'),
    place: 'job.yaml:1:1',
    words: ['--machine a or b'],
  },
  {
    what: 'a format that is no machine’s',
    args: [...machine('laser'), '--format', 'pdf'],
    place: 'job.yaml:1:1',
    words: ['svg, dxf, hpgl'],
  },
  {
    what: 'a dialect that is none',
    args: [...machine('laser'), '--dialect', 'r2001'],
    place: 'job.yaml:1:1',
    words: ['did you mean r2000'],
  },
  {
    what: 'a bed too small for the coupon',
    machines: '{laser: {bed: 100 x 100}}',
    args: ['--coupon'],
    place: 'job.yaml:1:1',
    words: ['coupon', '100 × 100 mm'],
  },
  {
    what: 'a job that cannot be solved',
    job: JOB.replace('100 x 150', '300 x 150'),
    args: machine('laser'),
    place: 'job.yaml:',
    words: ['opening'],
  },
];

describe('wrong machines and jobs: exit 2, the place, what to do, and nothing written', () => {
  it('knows at least twenty of them', () =>
    expect(new Set(BAD.map(({ what }) => what)).size).toBeGreaterThanOrEqual(20));

  for (const { what, job = JOB, machines, args = [], place, words } of BAD) {
    it(what, async () => {
      const files = { 'job.yaml': job, 'shop.yaml': `units: mm\nmachines: ${machines ?? '{}'}\n` };
      const ran = await run(['cutfile', '{}/job.yaml', '--out', '{}/out', ...args], files);
      expect(ran.err).not.toMatch(/\bat .*\.ts:|Error:/u);
      expect([ran.code, ran.out, ran.made]).toEqual([2, '', []]);
      const told = ran.err.split('\n').filter((line) => line.startsWith(`{}/${place}`));
      expect(
        told.some((line) => words.every((word) => line.includes(word))),
        ran.err,
      ).toBe(true);
      const json = await run(['cutfile', '{}/job.yaml', '--out', '{}/out', '--json', ...args], files);
      expect([json.code, json.made]).toEqual([2, []]);
      const { problems } = JSON.parse(json.out) as { problems: { code: string; severity: string }[] };
      expect(problems.some(({ severity }) => severity === 'error')).toBe(true);
      for (const { code } of problems) expect(code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/u);
    });
  }
});

describe('the command', () => {
  const shop = 'units: mm\nmachines: {laser: {kerf: 0.2, bed: 600 x 400}, knife: {offset: 0.25}}\n';
  const files = { 'job.yaml': JOB, 'shop.yaml': shop };

  it('writes one file for each layer and says what is in it, what is allowed for and what to beware of', async () => {
    const ran = await run(['cutfile', '{}/job.yaml', '--machine', 'laser', '--out', '{}/out'], files);
    expect([ran.code, ran.made]).toEqual([0, ['out', 'out/cut-laser-1.svg']]);
    for (const words of [
      'inner 1 path (closed)',
      'outer 1 path (closed)',
      'kerf 0.2 mm',
      'Never put vinyl',
      'extinguisher',
      'BACK of the board up',
    ])
      expect(ran.out).toContain(words);
    expect(ran.err).toContain('laser cuts square');
  });

  it('takes format and dialect from the call before the machine’s own, and says nothing when it is to be quiet', async () => {
    const dxf = await run(
      ['cutfile', '{}/job.yaml', '--machine', 'laser', '--format', 'DXF', '--quiet', '--out', '{}/out'],
      files,
    );
    expect([dxf.code, dxf.out, dxf.err, dxf.made]).toEqual([0, '', '', ['out', 'out/cut-laser-1.dxf']]);
    const plt = await run(['cutfile', '{}/job.yaml', '--machine', 'knife', '--out', '{}/out'], files);
    expect(plt.made).toEqual(['out', 'out/cut-knife-1-bed.svg', 'out/cut-knife-1.plt']);
  });

  it('lays all layers on one bed, and prints one JSON document', async () => {
    const double = JOB.replace('[{board: {thickness: 1.5}}]', '[{}, {reveal: 6}]');
    const apart = await run(['cutfile', '{}/job.yaml', '--machine', 'laser', '--out', '{}/out'], {
      ...files,
      'job.yaml': double,
    });
    expect(apart.made).toEqual(['out', 'out/cut-laser-1.svg', 'out/cut-laser-2.svg']);
    const together = await run(
      ['cutfile', '{}/job.yaml', '--machine', 'laser', '--together', '--json', '--out', '{}/out'],
      {
        ...files,
        'job.yaml': double,
      },
    );
    const json = JSON.parse(together.out) as {
      folder: string;
      files: string[];
      cutfiles: { boards: unknown[]; file: string }[];
    };
    expect([json.folder, json.files]).toEqual(['{}/out', ['cut-laser-1.svg']]);
    expect(json.cutfiles.map(({ boards, file }) => [boards.length, file])).toEqual([[2, 'cut-laser-1.svg']]);
  });

  it('makes a coupon instead, and warns where the shop knows no such machine', async () => {
    const ran = await run(['cutfile', '{}/job.yaml', '--machine', 'bevel', '--coupon', '--out', '{}/out'], files);
    expect([ran.code, ran.made]).toEqual([0, ['out', 'out/cut-bevel-coupon.dxf']]);
    expect(ran.err).toContain('the shop describes no bevel');
    expect(ran.out).toContain('Read on the face');
  });

  it('names files of its names that do not belong, and leaves them', async () => {
    const stale = await run(['cutfile', '{}/job.yaml', '--machine', 'laser', '--out', '{}'], {
      ...files,
      'cut-laser-7.svg': 'old',
    });
    expect(stale.out).toContain('cut-laser-7.svg does not belong to what was made now, and nothing says who made it');
  });

  it('shows an example in its help', async () => {
    const ran = await run(['cutfile', '--help']);
    expect([ran.code, ran.out.includes('matwright cutfile examples/')]).toEqual([0, true]);
  });
});
