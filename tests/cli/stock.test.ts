import { describe, expect, it } from 'vitest';
import { dayOf, madeDay } from '../documents/stock-days.ts';
import { inFolder, run } from './run.ts';

const FAST = ['--effort', '0.005'];
const one = 'title: One\nmat: {outer: 16 x 20, layers: [{board: a}]}\nopenings: [{artwork: 10 1/2 x 13 1/2}]\n';
const two = 'title: Two\ncount: 3\nmat: {outer: 8 x 10, layers: [{board: a}]}\nopenings: [{artwork: 5 x 7}]\n';
const bare = 'title: Bare\nmat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 13}]\n';
const wide = 'title: Wide\nmat: {outer: 30 x 20, layers: [{board: a}]}\nopenings: [{artwork: 20 x 13}]\n';
const shop = 'boards: {a: {name: Ash grey, sheets: [{size: 32 x 40, count: 9}], price: 9.5}}\n';
const files = { 'one.yaml': one, 'two.yaml': two, 'bare.yaml': bare, 'wide.yaml': wide, 'shop.yaml': shop };

describe('the stock command', () => {
  it('plans several jobs into one file, and says how good the plan is', async () => {
    const ran = await run(['stock', '{}/one.yaml', '{}/two.yaml', ...FAST], files);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.made).toEqual(['bench', 'bench/stock.pdf', 'shop.plans.json']);
    expect(ran.out).toContain('Ash grey: one sheet; optimal in cost; yield 43.8 %');
    const json = JSON.parse((await run(['stock', '{}/one.yaml', '--svg', '--json', ...FAST], files)).out);
    expect(json.files).toEqual(['stock.pdf', 'stock-1.svg', 'stock-2.svg']);
    expect(json.stock).toMatchObject({
      sheets: 1,
      cost: 9.5,
      boards: [{ board: 'a', first: 'cost', bound: { value: 9.5 } }],
    });
  });

  it('takes the usual sheet where nothing says what there is, and says so', async () => {
    const ran = await run(['stock', '{}/bare.yaml', ...FAST], files);
    expect(ran.code).toBe(0);
    expect(ran.err).toContain('nothing says what sheets of 4-ply board there are; 32 × 40 in is taken');
    const made = await dayOf({ 'bare.yaml': bare }, undefined);
    expect(made.ok && made.warnings.map(({ code }) => code)).toEqual(['stock-sheets-assumed']);
  });

  it('adds a backing board for each piece, and the backing of a frame', async () => {
    const framed = one.replace('outer: 16 x 20', 'frame: {nominal: 16 x 20, backing: foam}');
    const more = `${shop}backing: {foam: {name: Foam, thickness: 5 mm, sheets: [32 x 40]}}\n`;
    const { record } = await madeDay({ 'one.yaml': framed, 'two.yaml': two }, more, { backing: 'a' });
    expect(record.boards.map(({ name, kind, blanks }) => [name, kind, blanks])).toEqual([
      ['Ash grey', 'board', 8],
      ['Foam', 'backing', 1],
    ]);
    expect('cost' in record).toBe(false);
  });

  it('leaves out what is cut already', async () => {
    const { record } = await madeDay({ 'one.yaml': `${one}asCut: {outer: 16 1/32 x 20}\n`, 'two.yaml': two }, shop);
    expect(record.boards[0]!.blanks).toBe(3);
  });

  it('never turns a blank of a board that has a direction, and keeps a factory edge', async () => {
    const directed = shop.replace('price', 'directional: true, price');
    const { record } = await madeDay({ 'one.yaml': one, 'two.yaml': two }, directed);
    expect(record.boards[0]!.layouts[0]!.pieces.every(({ turned }) => !turned)).toBe(true);
    const edged = await madeDay(
      { 'one.yaml': one.replace('title', 'count: 6\ntitle') },
      `${shop}stock: {factoryEdge: true}\n`,
    );
    for (const { pieces, width, height } of edged.record.boards[0]!.layouts)
      for (const { x, y, width: w, height: h } of pieces)
        expect(x < 1e-6 || y < 1e-6 || x + w > width - 1e-6 || y + h > height - 1e-6).toBe(true);
  });
});

/** Job, shop, options, exit 2 with these words. */
const WRONG: readonly (readonly [files: Record<string, string>, args: readonly string[], words: readonly string[]])[] =
  [
    [
      { 'job.yaml': one.replace('16 x 20', '50 x 60') },
      [],
      [
        'job.yaml:2:',
        'mat.layers[0].board',
        'the blank of One, top mat, 50 × 60 in, is larger than every sheet of Ash grey; the largest that fits is 32 × 40 in',
      ],
    ],
    [
      { 'shop.yaml': `${shop}stock: {trim: 1/4}\n`, 'job.yaml': one.replace('16 x 20', '32 x 40') },
      [],
      ['the largest that fits is 31 1/2 × 39 1/2 in'],
    ],
    [
      {
        'shop.yaml': shop.replace('price', 'directional: true, price'),
        'job.yaml': wide.replace('30 x 20', '36 x 20'),
      },
      [],
      ['only turned by a quarter, but the board has a direction'],
    ],
    [
      { 'shop.yaml': `${shop}stock: {longestCut: 10}\n` },
      [],
      ['cannot be cut from a sheet of Ash grey without a cut longer than 10 in'],
    ],
    [
      { 'shop.yaml': `${shop}stock: {trim: 1/4, factoryEdge: true}\n` },
      [],
      ['needs a factory edge, but every sheet of Ash grey that holds it is trimmed all round'],
    ],
    [
      { 'shop.yaml': `${shop}stock: {trim: {sides: 7}}\n`, 'job.yaml': one.replace('16 x 20', '20 x 40') },
      [],
      ['the largest that fits is 18 × 40 in'],
    ],
    [
      { 'shop.yaml': shop.replace(', price: 9.5', '') },
      ['--cost'],
      [
        'shop.yaml:1:',
        'boards.a.sheets[0]',
        'the cost is asked for, but a sheet of Ash grey, 32 × 40 in, has no price',
      ],
    ],
    [
      { 'shop.yaml': 'boards: {a: {sheets: [{size: 32 x 40, price: 9}, 40 x 60]}}\n' },
      ['--cost'],
      ['boards.a.sheets[1]', 'has no price'],
    ],
    [{ 'shop.yaml': `${shop}stock: {kerf: -1/8}\n` }, [], ['shop.yaml:2:15', 'negative']],
    [{ 'shop.yaml': `${shop}stock: {kerff: 1/8}\n` }, [], ['did you mean kerf?']],
    [{ 'shop.yaml': `${shop}stock: {leastOffcut: 8}\n` }, [], ['a size such as']],
    [
      {
        'shop.yaml': 'boards: {a: {name: Ash grey, sheets: [{size: 32 x 40, count: 1}]}}\n',
        'job.yaml': `count: 6\n${one}`,
      },
      [],
      [
        'shop.yaml:1:',
        'boards.a.sheets',
        'Ash grey: the stock is too small',
        '2 × "One, top mat"',
        '1 more of "32 × 40 in" would do',
      ],
    ],
    [
      { 'shop.yaml': 'boards: {a: {sheets: [{size: 32 x 40, count: 0}]}}\n' },
      [],
      ['boards.a.sheets', 'every sheet has a count of 0'],
    ],
    [{ 'shop.yaml': 'boards: {a: {sheets: [{size: 32 x 40, count: 1.5}]}}\n' }, [], ['a whole number']],
    [{ 'shop.yaml': `${shop}shelf: [{id: S1, board: ab, size: 8 x 10}]\n` }, [], ['shop.yaml:2:25', 'did you mean a?']],
    [{ 'shop.yaml': `${shop}shelf: [{id: S1, board: a}]\n` }, [], ['size is missing']],
    [{ 'job.yaml': `${one}asCut: {outer: 16 x 20}\n` }, [], ['every blank of these jobs is cut already']],
    [
      { 'shop.yaml': 'boards: {a: {sheets: [10 x 10]}}\nstock: {trim: {sides: 6}}\n' },
      [],
      ['shop.yaml:2:', 'stock.trim', 'nothing is left of sheet'],
    ],
    [{}, ['--backing', 'b'], ['no board called b']],
    [{}, ['--effort', 'much'], ['--effort much: give a number from 0 to 1000']],
    [{}, ['--seed', '1.5'], ['--seed 1.5: give a whole number']],
    [{}, ['--paper', 'a5'], ['too small for readings']],
    [{}, ['--fallout-margin', '3'], ['unknown option']],
  ];

describe('a stock plan that cannot be', () => {
  it.each(WRONG)('%j with %j is refused with its place, and nothing is written', async (given, args, words) => {
    const ran = await run(['stock', '{}/job.yaml', ...FAST, ...args], { 'job.yaml': one, 'shop.yaml': shop, ...given });
    expect([ran.code, ran.made]).toEqual([2, []]);
    for (const each of words) expect(ran.err.replaceAll(/\s+/g, ' ')).toContain(each);
    expect(ran.err).not.toMatch(/^\s+at /mu);
  });

  it('names the problems of all boards at once, by code', async () => {
    const both = one.replace('[{board: a}]', '[{board: a}, {board: b}]').replace('16 x 20', '50 x 60');
    const made = await dayOf({ 'job.yaml': both }, 'boards: {a: {sheets: [32 x 40]}, b: {sheets: [40 x 60]}}\n');
    expect(made.ok ? [] : made.problems.map(({ code, line }) => [code, line])).toEqual([
      ['stock-piece-too-large', 2],
      ['stock-piece-too-large', 2],
    ]);
    const code = async (jobs: Record<string, string>, text: string, options = {}) => {
      const day = await dayOf(jobs, text, options);
      return day.ok ? [] : day.problems.map((problem) => problem.code);
    };
    expect(await code({ 'job.yaml': `${one}asCut: {outer: 16 x 20}\n` }, shop)).toEqual(['stock-nothing']);
    expect(await code({ 'job.yaml': one }, 'boards: {a: {}}\n', { cost: true })).toEqual(['stock-price-missing']);
  });

  it('refuses jobs of two shops', async () => {
    const twoShops = await run(['stock', '{}/one.yaml', 'examples/heron/job.yaml', ...FAST], files);
    expect([twoShops.code, twoShops.made]).toEqual([2, []]);
    expect(twoShops.err).toContain('the jobs lie beside different shop files');
  });

  it('passes over the shop among the jobs', async () => {
    const ran = await run(['stock', '{}/one.yaml', '{}/shop.yaml', '--quiet', ...FAST], files);
    expect([ran.code, ran.err, ran.made]).toEqual([0, '', ['bench', 'bench/stock.pdf', 'shop.plans.json']]);
  });
});

describe('a plan that is cut', () => {
  it('is booked by the number on its pages, once, and can be taken back', () =>
    inFolder(files, async (folder) => {
      const planned = await folder.run('stock', '{}/two.yaml', '--json', ...FAST);
      const { number } = JSON.parse(planned.out).stock.plan;
      expect(number).toMatch(/^\d{4}-\d{4}$/);
      expect(planned.made).toEqual(['shop.plans.json', 'two', 'two/stock.pdf']);
      expect(folder.text('shop.yaml')).toBe(shop);
      // The same plan again, and another beside it, change nothing of it.
      expect((await folder.run('stock', '{}/two.yaml', ...FAST)).out).toContain(
        `matwright stock --cut ${number} --shop`,
      );
      await folder.run('stock', '{}/one.yaml', '{}/two.yaml', ...FAST);
      const booked = await folder.run('stock', '--cut', number.replace('-', ' '), '--shop', '{}/shop.yaml');
      expect([booked.code, booked.err]).toEqual([0, '']);
      expect(booked.out).toBe(
        `plan ${number} booked in {}/shop.yaml\n  Ash grey, 32 × 40 in: 1 fewer; 8 are left\n  onto the shelf: S1\n`,
      );
      expect(folder.text('shop.yaml')).toContain('count: 8');
      expect(folder.text('shop.yaml')).toMatch(
        /\{id: S1, board: a, size: 32 x 32 in, note: .*32 x 40 in, \d{4}-\d\d-\d\d.*\}/u,
      );
      const again = await folder.run('stock', '--cut', number, '--shop', '{}/shop.yaml');
      expect([again.code, again.err]).toEqual([2, expect.stringContaining(`plan ${number} was booked on`)]);
      const back = await folder.run('stock', '--undo', '--shop', '{}/shop.yaml', '--json');
      expect([back.code, JSON.parse(back.out)]).toMatchObject([0, { plan: number, undone: { kept: [{ id: 'S1' }] } }]);
      expect(folder.text('shop.yaml')).toContain('count: 9');
      expect(folder.text('shop.yaml')).not.toContain('id: S1');
      const nothing = await folder.run('stock', '--undo', '--shop', '{}/shop.yaml');
      expect([nothing.code, nothing.err]).toEqual([2, expect.stringContaining('no plan is booked')]);
      expect((await folder.run('stock', '--cut', number, '--shop', '{}/shop.yaml', '--quiet')).out).toBe('');
    }));

  it('is asked for by a number that there is, without jobs, beside a shop', async () => {
    const wrong: readonly (readonly [args: readonly string[], words: string])[] = [
      [['--cut', '4127-0936', '--shop', '{}/shop.yaml'], 'there is no plan 4127-0936 in {}/shop.plans.json'],
      [['--cut', '41', '--shop', '{}/shop.yaml'], '41 is no number of a plan'],
      [['--cut', '4127-0936', '--undo'], '--cut and --undo exclude each other'],
      [['{}/one.yaml', '--cut', '4127-0936'], '--cut takes a plan by its number, no jobs'],
      [[], 'which jobs?'],
    ];
    for (const [args, words] of wrong) {
      const ran = await run(['stock', ...args], files);
      expect([ran.code, ran.made, ran.err]).toEqual([2, [], expect.stringContaining(words)]);
    }
    const torn = await run(['stock', '--undo', '--shop', '{}/shop.yaml'], {
      ...files,
      'shop.plans.json': '{"plans": [7]}',
    });
    expect([torn.code, torn.err]).toEqual([
      2,
      expect.stringContaining('shop.plans.json  plans[0]  the journal of plans is not as it was written'),
    ]);
  });

  it('has no number without a shop, and nothing to book where nothing is counted or kept', async () => {
    const none = await run(['stock', '{}/bare.yaml', '--json', ...FAST], files);
    expect(JSON.parse(none.out).stock.plan.idle).toBe(true);
    const idle = await run(['stock', '{}/bare.yaml', ...FAST], files);
    expect([idle.made, idle.out]).toEqual([['bare', 'bare/stock.pdf'], expect.stringContaining('nothing to book')]);
    const alone = await dayOf({ 'bare.yaml': bare }, undefined);
    expect(alone.ok && 'plan' in alone.value.record).toBe(false);
  });
});
