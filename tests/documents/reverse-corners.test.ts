import { describe, expect, it } from 'vitest';
import { instructions } from '../../src/documents/pattern/words.ts';
import { make, solveJob } from '../../src/index.ts';
import { readSheets, wordsOf } from './tickets.ts';

const SHOP = `units: mm
machines: {head: {kind: bevel, bed: 800 x 600, opening: left, overrun: 0.25}}
`;
const job = (bevel: string): string =>
  `units: mm\nmat: {border: 60, layers: [{board: {thickness: 3}, bevel: ${bevel}}]}\nopenings: [{size: 200 x 300}]`;

function solved(bevel: string) {
  const made = solveJob(job(bevel), { shop: { text: SHOP, file: 'shop.yaml' } });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const HOW =
  /up to 2\.8 mm at both ends of every stroke stay uncut at the back.*Free the corners from the back.*Never upright/s;

describe('every paper that leads to a reverse bevel says how its corners are freed', () => {
  it.each([
    ['{angle: 45, reverse: true}', true],
    ['45', false],
  ])('with a bevel of %s', async (bevel, said) => {
    const made = solved(bevel);
    const pattern = instructions(made.mat, made.strokes, made.job, 0, 'whole').join('\n');
    const ticket = wordsOf((await readSheets('ticket', [made])).pages);
    const cut = await make('cutfile', { jobs: [made] }, { machine: 'head', format: ['svg'] });
    if (!cut.ok) throw new Error(JSON.stringify(cut.problems));
    const file = cut.value.record.flatMap(({ allowances }) => allowances).join('\n');
    for (const words of [pattern, ticket, file]) expect(HOW.test(words)).toBe(said);
  });
});
