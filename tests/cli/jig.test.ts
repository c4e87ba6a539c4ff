import { describe, expect, it } from 'vitest';
import { JIGS } from '../../src/documents/jigs/jigs.ts';
import { run } from './run.ts';

const shop = 'units: mm\nprinters: {office: {x: 0.9965, y: 0.998}}\n';
const job = 'title: Heron\nunits: mm\nmat: {outer: 400 x 500}\nopenings: [{artwork: 270 x 340, overlap: 6}]\n';

describe('jig', () => {
  it('--list names every jig on one line each', async () => {
    const ran = await run(['jig', '--list']);
    const lines = ran.out.trimEnd().split('\n');
    expect(lines).toHaveLength(JIGS.length);
    for (const [i, { kind, summary }] of JIGS.entries()) {
      expect(lines[i]).toMatch(new RegExp(`^${kind} +\\S`, 'u'));
      expect(lines[i]).toContain(summary);
      expect(lines[i]!.length).toBeLessThanOrEqual(120);
    }
    const listed = JSON.parse((await run(['jig', '--list', '--json'])).out) as { kind: string }[];
    expect(listed.map(({ kind }) => kind)).toEqual(JIGS.map(({ kind }) => kind));
  });

  it('writes the sheets beside the shop, or where the job’s outputs go', async () => {
    const alone = await run(['jig', 'printer', '--shop', '{}/shop.yaml'], { 'shop.yaml': shop });
    expect([alone.code, alone.err, alone.made]).toEqual([0, '', ['jigs', 'jigs/jig-printer.pdf']]);
    expect(alone.out).toContain(
      'jig-printer.pdf  Printer jig for A4, one sheet\nnot corrected for any printer\nwritten to {}/jigs',
    );
    const files = { 'shop.yaml': shop, 'heron.yaml': job };
    const own = await run(['jig', 'art-corner', '{}/heron.yaml', '--cut', 'svg'], files);
    expect(own.made).toEqual(['heron', 'heron/jig-art-corner.pdf', 'heron/jig-art-corner.svg']);
  });

  it('--json is one document', async () => {
    const ran = await run(['jig', 'guide', '--out', '{}/out', '--json', '--paper', 'a4']);
    expect(JSON.parse(ran.out)).toMatchObject({ kind: 'guide', sheets: 1, files: ['jig-guide.pdf'] });
  });

  it.each([
    [['jig'], 'which jig?'],
    [['jig', 'heads'], 'did you mean head?'],
    [['jig', 'art-corner'], 'is made for a job'],
    [['jig', 'guide', '--paper', 'lettr'], 'did you mean letter?'],
    [['jig', 'guide', '{}/none.yaml'], 'there is no such job'],
    [['jig', 'reveal', '--cut', 'svg,dwg'], 'dwg'],
  ])('%j is refused, and nothing is written', async (args, words) => {
    const ran = await run([...args, '--out', '{}/out'].slice(0, args.length + (args.length > 1 ? 2 : 0)));
    expect([ran.code, ran.made]).toEqual([2, []]);
    expect(ran.err).toContain(words);
  });

  it('the same jig gives the same bytes', async () => {
    const { make } = await import('../../src/index.ts');
    const bytes = async () => {
      const made = await make('jig', { jobs: [] }, { kind: 'head', thickness: '1.4' });
      return made.ok ? made.value.files.map((file) => Buffer.from(file.bytes).toString('base64')) : [];
    };
    expect(await bytes()).toEqual(await bytes());
  });
});
