import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/index.ts';
import { readSheets } from './tickets.ts';

/** A blank and a back for each piece: so many labels are twice that many pieces. */
function pieces(count: number) {
  const made = solveJob(
    `title: Ebb\nunits: mm\ncount: ${count}\nmat: {outer: 300 x 400}\nopenings: [{size: 100 x 150}]\n`,
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return [made.value];
}

const heads = async (count: number, options = {}) => {
  const { pages } = await readSheets('labels', pieces(count), { paper: 'a4', ...options });
  return pages.map(({ texts, height }) =>
    texts
      .filter(({ text }) => /^Ebb, \d+ of \d+$/.test(text))
      .map(({ text, at }) => ({ text, row: Math.floor(((at.y - 13) / (height - 26)) * 8), x: at.x })),
  );
};

describe('labels', () => {
  it('fill every cell of every sheet: 48 of them on two sheets of 24, each piece twice', async () => {
    const sheets = await heads(24);
    expect(sheets.map((sheet) => sheet.length)).toEqual([24, 24]);
    const all = sheets.flat().map(({ text }) => text);
    for (let n = 1; n <= 24; n++) expect(all.filter((text) => text === `Ebb, ${n} of 24`)).toHaveLength(2);
    // Three in each of the eight rows, at three places across.
    for (const sheet of sheets) {
      for (let row = 0; row < 8; row++) expect(sheet.filter((each) => each.row === row)).toHaveLength(3);
      expect(new Set(sheet.map(({ x }) => Math.round(x))).size).toBe(3);
    }
  });

  it('begin behind those that are used already, on the first sheet alone', async () => {
    const sheets = await heads(24, { skip: 5 });
    expect(sheets.map((sheet) => sheet.length)).toEqual([19, 24, 5]);
    expect(sheets[0]![0]).toMatchObject({ text: 'Ebb, 1 of 24', row: 1 });
    // One more than two sheets hold has a third to itself.
    expect((await heads(24, { skip: 1 })).map((sheet) => sheet.length)).toEqual([23, 24, 1]);
  });
});
