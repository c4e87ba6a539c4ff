import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { base } from '../pictures/made.ts';
import { MARK } from '../pictures/marks.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { inFolder, run } from './run.ts';

const JOB = 'title: Terns\nnumber: A-07\nmat: {outer: 16 x 20}\nopenings: [{artwork: 8 x 10}]\n';
const SHOP = 'shop: {name: Saltmarsh Print Room, mark: mark.svg}\nboards: {a: {name: Bone}}\n';
const files = { 'job.yaml': JOB, 'shop.yaml': SHOP, 'mark.svg': MARK };
const WATER = '#1d4e63';

describe('the shop’s own mark', () => {
  it.each(['proof', 'intake', 'labels'])('is painted on %s', async (output) => {
    await inFolder(files, async (folder) => {
      const ran = await folder.run(output, '{}/job.yaml', '--out', '{}/out');
      expect([ran.code, ran.err]).toEqual([0, '']);
      const { pages } = await readPdf(new Uint8Array(readFileSync(folder.at(`out/${output}.pdf`))));
      const fills = pages.map(({ lines }) => new Set(lines.flatMap(({ fill }) => fill ?? [])));
      expect(fills[0]!.has(WATER)).toBe(true);
    });
  });

  it('may be a picture', async () => {
    const png = new Uint8Array(await base(300, 200).png().toBuffer());
    const shop = SHOP.replace('mark.svg', 'mark.png');
    await inFolder({ ...files, 'shop.yaml': shop, 'mark.png': png }, async (folder) => {
      for (const output of ['proof', 'intake', 'labels']) {
        const ran = await folder.run(output, '{}/job.yaml', '--out', '{}/out');
        expect([ran.code, ran.err]).toEqual([0, '']);
        expect(folder.text(`out/${output}.pdf`)).toContain('/DCTDecode');
      }
    });
  });

  it('is looked for beside the shop’s file, wherever the job lies, and told there', async () => {
    const ran = await run(['intake', '{}/job.yaml'], { ...files, 'shop.yaml': SHOP.replace('mark.svg', 'no.svg') });
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(/shop\.yaml:1:\d+ {2}shop\.mark {2}there is no picture .*no\.svg/u);
    expect(ran.made).toEqual([]);
  });

  it('is told with its line where it cannot be painted', async () => {
    const ran = await run(['proof', '{}/job.yaml'], {
      ...files,
      'mark.svg': MARK.replace('<circle', '<text/><circle'),
    });
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(/shop\.yaml:1:\d+ {2}shop\.mark {2}line 9: <text> is not read/u);
  });

  it('is never written over', async () => {
    const png = new Uint8Array(await base(30, 20).png().toBuffer());
    await inFolder(
      { ...files, 'shop.yaml': SHOP.replace('mark.svg', 'labels.png'), 'labels.png': png },
      async (folder) => {
        const ran = await folder.run('labels', '{}/job.yaml', '--png', '--dpi', '40', '--out', '{}');
        expect(ran.code).not.toBe(0);
        expect(ran.err).toContain('would be written over the picture');
        expect(new Uint8Array(readFileSync(folder.at('labels.png')))).toEqual(png);
      },
    );
  });

  it('belongs to what a day is made of: once it has changed, proofs and labels are made again', async () => {
    const second = JOB.replace('A-07', 'A-08').replace('Terns', 'Gulls');
    await inFolder({ ...files, 'second.yaml': second }, async (folder) => {
      const make = async () => {
        const ran = await folder.run('make', '{}/job.yaml', '{}/second.yaml', '--out', '{}/out');
        expect([ran.code, ran.err.replaceAll(/^.*warning.*\n/gmu, '')]).toEqual([0, '']);
        return ran.out;
      };
      const inked = async (name: string): Promise<boolean> => {
        const { pages } = await readPdf(new Uint8Array(readFileSync(folder.at(`out/${name}`))));
        return pages.some(({ lines }) => lines.some(({ fill }) => fill === WATER));
      };
      await make();
      expect([await inked('job/proof.pdf'), await inked('labels.pdf')]).toEqual([true, true]);
      const { made } = JSON.parse(folder.text('out/job/manifest.json'));
      expect(made.pictures.map(({ name }: { readonly name: string }) => name)).toEqual(['mark.svg']);
      expect(await make()).toContain('2 jobs have not changed');
      writeFileSync(folder.at('mark.svg'), MARK.replaceAll(WATER, '#22aa44'));
      await make();
      expect([await inked('job/proof.pdf'), await inked('labels.pdf')]).toEqual([false, false]);
    });
  });
});
