import { describe, expect, it } from 'vitest';
import { build } from '../../src/index.ts';
import { run } from './run.ts';

const one = 'title: One\nmat: {outer: 16 x 20}\nopenings: [{artwork: 10 1/2 x 13 1/2}]\n';
const two =
  'title: Two\ncount: 2\nmat: {outer: 14 x 17, layers: [{board: {name: Slate, thickness: 1.4 mm, colour: "#556677"}}]}\nopenings: [{artwork: 8 x 10}]\n';
const bare = 'mat: {border: 3}\nopenings: [{size: 8 x 10}]\n';
const files = { 'one.yaml': one, 'two.yaml': two };

describe('the commands for the bench', () => {
  it('ticket writes one file for a job, beside it', async () => {
    const ran = await run(['ticket', '{}/one.yaml', '--number', '41'], files);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.made).toEqual(['one', 'one/ticket.pdf']);
    expect(ran.out).toContain('ticket.pdf  One, bench ticket, one sheet');
  });

  it('ticket counts the numbers of several jobs on in the order given, and stands in the order of its numbers', async () => {
    const ran = await run(['ticket', '{}/two.yaml', '{}/one.yaml', '--number', 'A-09', '--json'], files);
    expect(ran.code).toBe(0);
    expect(ran.made).toEqual(['bench', 'bench/ticket.pdf']);
    const { ticket, jobs, sheets } = JSON.parse(ran.out);
    // The run lists what is cut board by board, and lies in front; a ticket is found by its number.
    expect(ticket.map(({ title, number }: { title: string; number: string }) => [title, number])).toEqual([
      ['Two', 'A-09'],
      ['One', 'A-10'],
    ]);
    expect(sheets).toBe(3);
    expect(jobs.map(({ title }: { title: string }) => title)).toEqual(['Two', 'One']);
    expect(ticket[0].layers[0].settings[0]).toMatchObject({ reading: expect.any(String), unit: 'in' });
  });

  it('takes the number that the job says, unless another is asked for', async () => {
    const own = { 'one.yaml': `number: 7\n${one}`, 'two.yaml': `number: "B-03"\n${two}`, 'bare.yaml': bare };
    const numbers = async (...args: string[]) => {
      const ran = await run(['ticket', '{}/one.yaml', '{}/two.yaml', '{}/bare.yaml', ...args, '--json'], own);
      const found = JSON.parse(ran.out).ticket as { title: string; number?: string }[];
      return new Map(found.map(({ title, number }) => [title, number]));
    };
    expect(await numbers()).toEqual(
      new Map([
        ['One', '7'],
        ['Two', 'B-03'],
        ['bare', undefined],
      ]),
    );
    expect((await numbers('--number', '40')).get('Two')).toBe('41');
    const intake = JSON.parse((await run(['intake', '{}/one.yaml', '--json'], own)).out).intake as {
      fields: { label?: string; value?: string }[];
    }[];
    const field = intake.flatMap(({ fields }) => fields).find(({ label }) => label === 'Job number');
    expect(field!.value).toBe('7');
    const long = await run(['ticket', '{}/long.yaml'], { 'long.yaml': `number: ${'9'.repeat(25)}a\n${one}` });
    expect([long.code, long.err]).toEqual([2, expect.stringContaining('number  the text has 26 characters')]);
  });

  it('blanks counts every blank by board', async () => {
    const ran = await run(['blanks', '{}/one.yaml', '{}/two.yaml', '{}/one.yaml', '--json'], files);
    const { blanks } = JSON.parse(ran.out);
    expect(blanks.map(({ name, count }: { name: string; count: number }) => [name, count])).toEqual([
      ['4-ply board', 2],
      ['Slate', 2],
    ]);
    expect(blanks[0].blanks).toMatchObject([{ shown: '16 × 20 in', count: 2 }]);
  });

  it('labels makes one for each blank and each back', async () => {
    const ran = await run(['labels', '{}/two.yaml', '--rows', '4', '--columns', '2', '--gap', '2 mm', '--json'], files);
    expect(JSON.parse(ran.out).labels.map(({ kind }: { kind: string }) => kind)).toEqual([
      'blank',
      'back',
      'blank',
      'back',
    ]);
    expect(ran.made).toEqual(['two', 'two/labels.pdf']);
  });

  it('intake makes an empty form, and the same fields filled in', async () => {
    const labels = (record: { fields: { label?: string }[] }[]) =>
      record.flatMap(({ fields }) => fields.map(({ label }) => label));
    const empty = JSON.parse((await run(['intake', '--out', '{}/forms', '--json'])).out).intake;
    const filled = JSON.parse((await run(['intake', '{}/one.yaml', '--json'], files)).out).intake;
    expect(labels(filled)).toEqual(labels(empty));
    expect(JSON.stringify(empty)).not.toContain('"value":');
    expect(JSON.stringify(filled)).toContain('10½ × 13½ in');
  });

  it('placement says where the artwork lies, whole where one sheet holds it', async () => {
    const corners = JSON.parse((await run(['placement', '{}/one.yaml', '--json'], files)).out);
    expect(corners.placement.extent).toBe('corners');
    expect(corners.placement.artworks).toMatchObject([
      { fromLeft: corners.openings[0].artwork.box.x, fromTop: corners.openings[0].artwork.box.y, hinges: 'T' },
    ]);
    const whole = JSON.parse((await run(['placement', '{}/one.yaml', '--paper', 'arch-d', '--json'], files)).out);
    expect(whole.placement.extent).toBe('whole');
  });

  it.each([
    [['ticket', '{}/missing.yaml'], 'there is no such job'],
    [['ticket', '{}/one.yaml', '--paper', 'fit'], 'single sheets of paper'],
    [['ticket', '{}/one.yaml', '--paper', 'a5'], 'too small for readings'],
    [['ticket', '{}/one.yaml', '--paper', 'leter'], 'not a known paper'],
    [['labels', '{}/one.yaml', '--rows', '50'], 'labels would be'],
    [['labels', '{}/one.yaml', '--columns', '0'], 'give a whole number'],
    [['labels', '{}/one.yaml', '--gap', '2,5,6'], 'one length, or two'],
    [['labels', '{}/one.yaml', '--margin', 'wide'], '--margin wide'],
    [['intake', '--units', 'ell'], 'write in, mm or cm'],
    [['placement', '{}/bare.yaml'], 'no artwork to place'],
    [['placement', '{}/one.yaml', '--extent', 'half'], 'whole or corners'],
  ])('%j is refused, and nothing is written', async (args, words) => {
    const ran = await run(args, { ...files, 'bare.yaml': bare });
    expect([ran.code, ran.made]).toEqual([2, []]);
    expect(ran.err).toContain(words);
  });

  it('are documents of build too, on the usual paper where the pattern goes on a roll', async () => {
    const documents = ['pattern', 'ticket', 'placement', 'blanks', 'labels', 'intake'] as const;
    const made = await build(one, { documents, paper: 'roll:36in' });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(made.value.files.map(({ name }) => name)).toEqual([
      'pattern-1.pdf',
      'ticket.pdf',
      'placement.pdf',
      'blanks.pdf',
      'labels.pdf',
      'intake.pdf',
    ]);
    expect(Object.keys(made.value.report.sheets ?? {})).toEqual(documents.slice(1));
    const again = await build(one, { documents, paper: 'roll:36in' });
    expect(again).toEqual(made);
  });

  it('names characters that cannot be shown, and shows the rest', async () => {
    const odd = `title: "Heron \u{1F9A2}"\n${one.split('\n').slice(1).join('\n')}`;
    const ran = await run(['ticket', '{}/one.yaml'], { 'one.yaml': odd });
    expect(ran.code).toBe(0);
    expect(ran.err).toContain('U+1F9A2');
    const letters = await run(['labels', '{}/one.yaml', '--number', 'עגור'], files);
    expect(letters.code).toBe(0);
    expect(letters.err).toContain('Hebrew');
  });
});
