import { describe, expect, it } from 'vitest';
import { build } from '../../src/index.ts';

const JOB = `units: mm
mat: {outer: 300 x 400, layers: [{bevel: 45}, {reveal: 6, trimBack: 4}]}
openings: [{name: Heron, size: 120 x 150, place: {left: 90, top: 40}}]
lettering: [{text: TEN, height: 40, place: {bottom: 40}}]
`;
const shop = {
  file: 'shop.yaml',
  text: 'units: mm\nmachines: {laser: {kind: laser, kerf: 0.2}, fixed: {kind: bevel, bevel: 45, outside: false}, free: {kind: bevel}}\n',
};

async function made(machine: string) {
  const built = await build(JOB, { shop, documents: ['cutfile'], machine, format: ['svg'] });
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  const text = (file: string): string =>
    new TextDecoder().decode(built.value.files.find(({ name }) => name === `cut-${machine}-${file}.svg`)!.bytes);
  return { text, codes: built.warnings.map(({ code }) => code) };
}

const letters = (svg: string): readonly string[] => [...svg.matchAll(/id="(lettering-[^"]+)"/g)].map(([, id]) => id!);

describe('lettering in cut files', () => {
  it('is cut in the top mat, each window closed, and nowhere else', async () => {
    const { text } = await made('laser');
    expect([...letters(text('1'))].sort()).toEqual(['lettering-1-1-1', 'lettering-1-2-1', 'lettering-1-3-1']);
    expect(letters(text('2'))).toEqual([]);
  });

  it('is left out, and told of, where a bevel head cannot stand upright', async () => {
    const fixed = await made('fixed');
    expect(letters(fixed.text('1'))).toEqual([]);
    expect(fixed.codes).toContain('lettering-by-hand');
    const free = await made('free');
    expect(letters(free.text('1')).length).toBeGreaterThan(20);
    expect(free.codes).not.toContain('lettering-by-hand');
  });
});
