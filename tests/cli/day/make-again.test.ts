import { readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { TWO, twoJobs } from './two-jobs.ts';

const { at, made, out, edit } = twoJobs();

describe('make again', () => {
  const times = async (): Promise<Readonly<Record<string, number>>> => {
    const names = (await readdir(at('out'), { recursive: true })).sort();
    const all = await Promise.all(names.map(async (name) => [name, (await stat(at('out', name))).mtimeMs] as const));
    return Object.fromEntries(all.filter(([name]) => name.includes('.')));
  };
  const changed = async (work: () => Promise<unknown>): Promise<readonly string[]> => {
    const before = await times();
    await work();
    const after = await times();
    return Object.keys(after).filter((name) => after[name] !== before[name]);
  };
  const alone = async (...more: readonly string[]) => {
    const ran = await out(...more);
    expect([ran.code, ran.err.replaceAll(/^.*warning.*\n/gmu, '')]).toEqual([0, '']);
    return ran;
  };

  it('leaves alone what has not changed, and all of it where nothing has', async () => {
    await alone();
    expect(await changed(() => alone())).toEqual([]);
    expect((await alone()).out).toContain('2 jobs have not changed');
    const ofTwo = await changed(async () => {
      await edit('two.yaml', 'size: 90 x 90', 'size: 91 x 90');
      await alone();
    });
    expect(ofTwo.filter((name) => name.startsWith('one/'))).toEqual([]);
    expect(ofTwo).toEqual(expect.arrayContaining(['two/pattern-1.pdf', 'patterns.pdf', 'index.html', 'stock.pdf']));
    expect(await changed(() => alone('--force'))).toContain('one/ticket.pdf');
  });

  it('gives the bytes of a run that began with nothing', async () => {
    await alone();
    await edit('two.yaml', 'size: 90 x 90', 'size: 91 x 90');
    await alone();
    const files = async () =>
      Promise.all(
        (await readdir(at('out'), { recursive: true }))
          .sort()
          .filter((n) => n.includes('.'))
          .map(async (n) => [n, await readFile(at('out', n), 'latin1')]),
      );
    const again = await files();
    await rm(at('out'), { recursive: true });
    await alone();
    expect(again).toEqual(await files());
  });

  it('is made where job, shop, number, option or version is another', async () => {
    await alone();
    expect(await changed(() => alone('--number', '41'))).toContain('one/ticket.pdf');
    expect(await changed(() => alone('--number', '41', '--paper', 'a4'))).toContain('one/ticket.pdf');
    await edit('shop.yaml', 'kerf: 0.2', 'kerf: 0.3');
    expect(await changed(() => alone('--number', '41', '--paper', 'a4'))).toContain('one/cut-laser-1.svg');
    for (const [key, other] of [
      [/"by": "[^"]+"/u, '"by": "older"'],
      [/"of": "../u, '"of": "zz'],
    ] as const) {
      await edit('out/one/manifest.json', key, other);
      expect(await changed(() => alone('--number', '41', '--paper', 'a4'))).toContain('one/ticket.pdf');
    }
  });

  it('makes again what was damaged, taken away or changed by hand', async () => {
    await alone();
    await writeFile(at('out', 'one', 'ticket.pdf'), 'mine');
    expect(await changed(() => alone())).toContain('one/ticket.pdf');
    await rm(at('out', 'two', 'proof.pdf'));
    expect(await changed(() => alone())).toContain('two/proof.pdf');
    await rm(at('out', 'stock.pdf'));
    expect(await changed(() => alone())).toEqual(expect.arrayContaining(['stock.pdf']));
    const bytes = await readFile(at('out', 'one', 'ticket.pdf'));
    await writeFile(at('out', 'one', 'ticket.pdf'), Buffer.from(bytes).fill(32, 200, 300));
    expect(await changed(() => alone())).toContain('one/ticket.pdf');
    // Touched, but not changed.
    await utimes(at('out', 'two', 'ticket.pdf'), new Date(), new Date());
    expect(await changed(() => alone())).toEqual([]);
    expect(await changed(() => alone('--verify'))).toEqual([]);
  });

  it('tells of what no job has any more, and takes it away where it is ours and that is wished', async () => {
    await writeFile(at('two.yaml'), `${TWO}make: [ticket, proof]\n`);
    await alone();
    await edit('two.yaml', 'make: [ticket, proof]', 'make: [ticket]');
    await writeFile(at('out', 'two', 'notes.txt'), 'mine');
    const told = await alone();
    expect(told.out).toContain('proof.pdf is from an earlier run and does not belong');
    // Also where nothing is written.
    expect((await alone()).out).toContain('proof.pdf is from an earlier run and does not belong');
    await edit('two.yaml', 'make: [ticket]', 'make: [ticket, proof]');
    await alone();
    await writeFile(at('out', 'two', 'proof.svg'), 'changed by hand');
    await edit('two.yaml', 'make: [ticket, proof]', 'make: [ticket]');
    await alone('--prune');
    expect(await made('out', 'two')).toEqual(['manifest.json', 'notes.txt', 'proof.svg', 'ticket.pdf']);
    await rm(at('two.yaml'));
    const left = await alone('--prune');
    expect(left.out).toContain(`${at('out', 'two')} is of a job that was not asked for now and was taken away`);
    expect(await made('out', 'two')).toEqual(['notes.txt', 'proof.svg']);
  });
});
