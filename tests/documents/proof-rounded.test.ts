import { describe, expect, it } from 'vitest';
import { build } from '../../src/index.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { proofOf } from './proofs.ts';

describe('the outside of a framed piece', () => {
  const job = 'mat: {frame: {inside: 32 x 40, moulding: ash}, layers: [{board: a}]}\nopenings: [{artwork: 20 x 28}]\n';
  const shop = `
boards: {a: {name: Bone, thickness: 1.4 mm, sheets: [32 x 40 in], price: 9.99}}
mouldings: {ash: {name: Ash, lip: 1/4, width: 1 1/4, price: {unitedInch: 1}}}
prices: {}
`;

  it('is one number on proof, ticket and in the price', async () => {
    const made = await proofOf({ job, file: 'job.yaml', shop });
    const page = (await readPdf(made.pdf)).pages[0]!;
    const words = page.texts.map(({ text }) => text);
    expect(words.slice(words.indexOf('Frame outside'))[1]).toBe('34 × 42 in');
    expect(words).toContain('76.00');
    const ticket = await build(job, { documents: ['ticket'], shop: { text: shop, file: 'shop.yaml' } });
    if (!ticket.ok) throw new Error(JSON.stringify(ticket.problems));
    const said = (await readPdf(ticket.value.files[0]!.bytes)).pages.flatMap(({ texts }) =>
      texts.map(({ text }) => text),
    );
    expect(said.join(' ')).toContain('2 × 34 in and 2 × 42 in over the long points');
  });

  it('no paper that somebody cuts from has a rounded number on it', async () => {
    const odd = job.replace('20 x 28', '20 1/7 x 28 1/9').replace('inside: 32 x 40', 'inside: 31 1/7 x 40');
    const rounded = await readPdf((await proofOf({ job: odd, file: 'job.yaml', shop })).pdf);
    expect(rounded.pages.flatMap(({ texts }) => texts).some(({ text }) => text.includes('≈'))).toBe(true);
    for (const document of ['ticket', 'pattern', 'blanks', 'labels', 'placement', 'intake'] as const) {
      const made = await build(odd, { documents: [document], shop: { text: shop, file: 'shop.yaml' } });
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      for (const { name, bytes } of made.value.files.filter((file) => file.name.endsWith('.pdf'))) {
        const words = (await readPdf(bytes)).pages.flatMap(({ texts }) => texts.map(({ text }) => text));
        expect(
          words.filter((text) => text.includes('≈')),
          name,
        ).toEqual([]);
      }
    }
  });
});

it('each of several ways has its letter on its drawing, an edge of one colour a hairline, each opening its name', async () => {
  const shop =
    'boards: {a: {name: Bone, thickness: 1.4 mm, colour: "#e0d4bc"}, b: {name: Slate, thickness: 1.4 mm, colour: "#445566"}}\n';
  const job =
    'number: 12\nmat: {outer: 20 x 16, layers: [{board: a}, {board: b, reveal: 1/4}]}\nopenings: [{name: Heron, artwork: 6 x 8}, {name: Tern, artwork: 5 x 8}]\n';
  const made = await proofOf({ job, file: 'job.yaml', shop }, { vary: 'mat.layers[1].board=b,a' });
  const page = (await readPdf(made.pdf)).pages[0]!;
  for (const letter of ['A', 'B']) {
    const own = page.texts.filter(({ text }) => text === letter);
    expect(own.map(({ size }) => size).sort()).toEqual([expect.closeTo(3.05, 2), expect.closeTo(7.5, 2)]);
  }
  const words = page.texts.map(({ text }) => text);
  expect(words).toContain('12  job');
  for (const name of ['Opening Heron', 'Opening Tern', 'Heron', 'Tern']) expect(words).toContain(name);
  // The hairline of 0.08 mm is drawn where bone lies on bone, and not where slate does.
  const thin = [...page.lines, ...page.curves].filter(({ widthPt }) => Math.abs(widthPt - (0.08 * 72) / 25.4) < 1e-3);
  const middle = page.width / 2;
  expect(thin.filter(({ from }) => from.x > middle).length).toBeGreaterThanOrEqual(8);
  expect(thin.filter(({ from }) => from.x < middle)).toEqual([]);
});

it('an opening without a name is said once to be one', async () => {
  const job = 'mat: {outer: 20 x 16}\nopenings: [{artwork: 6 x 8}, {artwork: 5 x 8}]\n';
  const words = (await readPdf((await proofOf({ job, file: 'job.yaml' })).pdf)).pages[0]!.texts.map(({ text }) => text);
  expect(words.filter((text) => /opening/iu.test(text))).toEqual(['Opening 1', 'Opening 2']);
});
