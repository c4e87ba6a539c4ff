import { describe, expect, it } from 'vitest';
import { showDay } from '../../src/read/fields/day.ts';
import { readSheets, solvedSample } from './tickets.ts';

const SHOP = `units: mm
boards: {bone: {name: Bone, thickness: 1.4 mm, sheets: [810 x 1010], price: 9.5}}
`;
const job = (own: string): string => `title: Heron, linocut
${own}units: mm
mat: {outer: 400 x 500, layers: [{board: bone}, {board: bone, reveal: 6}]}
openings: [{artwork: 270 x 340, overlap: 6}]
`;
const solved = (own: string) => solvedSample({ name: 'heron', job: job(own), shop: SHOP });
const NUMBERED = solved('number: A-07\ndue: 2031-03-12\n');
const OTHER = solved('number: A-08\ndue: 2031-03-10\n');

/** Whatever is printed of a job, but for stickers. */
const OUTPUTS = ['pattern', 'proof', 'ticket', 'intake', 'placement', 'blanks', 'stock'] as const;

describe.each(OUTPUTS)('%s', (output) => {
  it.each(['letter', 'a4', 'a3'])('says number and day on every sheet of %s', async (paper) => {
    const { pages } = await readSheets(output, [NUMBERED], { paper });
    expect(pages.length).toBeGreaterThan(0);
    for (const { texts, number } of pages) {
      const words = texts.map(({ text }) => text).join(' ');
      expect(words, `page ${number}`).toContain('A-07');
      expect(words, `page ${number}`).toContain('due Wed 12 March 2031');
    }
  });

  it('says neither where there is none', async () => {
    const { pages } = await readSheets(output, [solved('')], { paper: 'letter' });
    expect(pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ')).not.toContain('due ');
  });
});

it('corner sheets and one page say them too', async () => {
  for (const options of [{ extent: 'corners', paper: 'letter' }, { paper: 'roll:24in' }] as const) {
    const { pages } = await readSheets('pattern', [NUMBERED], options);
    for (const { texts } of pages) {
      const words = texts.map(({ text }) => text).join(' ');
      expect(words).toContain('A-07');
      expect(words).toContain('due Wed 12 March 2031');
    }
  }
});

it('lists of several jobs have all numbers and the first day', async () => {
  const { pages } = await readSheets('stock', [NUMBERED, OTHER], { paper: 'letter' });
  for (const { texts } of pages) {
    expect(texts.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['A-07, A-08', 'first due Mon 10 March 2031']),
    );
  }
});

it('a jig that is made for a job says them in its foot', async () => {
  const { pages } = await readSheets('jig', [NUMBERED], { kind: 'art-corner', paper: 'letter' });
  for (const { texts } of pages) {
    expect(texts.map(({ text }) => text).join(' ')).toContain('A-07, due Wed 12 March 2031, jig art-corner');
  }
});

it('names the days of the week as the calendar does', () => {
  for (let at = Date.UTC(1900, 0, 1); at < Date.UTC(2199, 11, 31); at += 86_400_000 * 13) {
    const day = new Date(at);
    const name = day.toLocaleDateString('en-GB', { weekday: 'short', timeZone: 'UTC' });
    expect(showDay(day.toISOString().slice(0, 10))).toBe(
      `${name} ${day.getUTCDate()} ${day.toLocaleDateString('en-GB', { month: 'long', timeZone: 'UTC' })} ${day.getUTCFullYear()}`,
    );
  }
});
