import { beforeAll, describe, expect, it } from 'vitest';
import { type BuildOptions, build } from '../../src/index.ts';
import { made as madeJig } from '../documents/jig-samples.ts';
import { type ReadPdf, type ReadPoint, readPdf } from '../readers/pdf-lines.ts';

/** The one printer of the shop prints a hundredth short in x, and 4 in 1,000 long in y. */
const SCALE = { x: 0.99, y: 1.004 };
const BARE = 'units: mm\nheads: {pull: {bevel: 45, opening: left}}\n';
const shopWith = (printer: string) => ({ text: `${BARE}printers: {office: {${printer}}}\n`, file: 'shop.yaml' });
const SHOP = shopWith(`x: ${SCALE.x}, y: ${SCALE.y}`);
const JOB = `units: mm
mat: {outer: 160 x 230}
openings: [{artwork: 100 x 150, overlap: 5}]
bench: {head: pull}
print: {paper: a4}
`;
const OUTER = { width: 160, height: 230 };
const CORRECTED = 'corrected for printer office: it prints 0.99 in x, 1.004 in y';

async function pdf(name: string, options: BuildOptions, job = JOB): Promise<ReadPdf> {
  const made = await build(job, { shop: SHOP, ...options });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return readPdf(made.value.files.find((file) => file.name === name)!.bytes);
}

const wordsOn = ({ texts }: ReadPdf['pages'][number]): string => texts.map(({ text }) => text).join(' ');
const words = ({ pages }: ReadPdf): string => pages.map(wordsOn).join(' ');

/** The sizes of all upright rectangles' sides on a page: how far lines run across and down. */
const runs = (lines: readonly { readonly from: ReadPoint; readonly to: ReadPoint }[]) =>
  lines.map(({ from, to }) => ({ across: Math.abs(to.x - from.x), down: Math.abs(to.y - from.y) }));

/** Whether something of the board's or the backing's size is drawn, each way multiplied by the inverse of a scale. */
function drawnAt(read: ReadPdf, scale: { readonly x: number; readonly y: number }): boolean {
  const found = read.pages.flatMap(({ lines }) => runs(lines));
  const has = (across: number, down: number) =>
    found.some((run) => Math.abs(run.across - across) < 0.002 && Math.abs(run.down - down) < 0.002);
  return has(OUTER.width / scale.x, 0) && has(0, OUTER.height / scale.y);
}

const TRUE = { x: 1, y: 1 };

describe('a shop with one printer and a job that names none', () => {
  it.each([
    ['pattern', 'pattern-1.pdf'],
    ['placement', 'placement.pdf'],
  ] as const)('the %s is corrected for it, and says so', async (document, name) => {
    const read = await pdf(name, { documents: [document] });
    expect([drawnAt(read, SCALE), drawnAt(read, TRUE)]).toEqual([true, false]);
    for (const page of read.pages) expect(wordsOn(page)).toContain(CORRECTED);
  });

  it('the head jig, which is used together with the pattern, as well', async () => {
    const made = await madeJig('head', { shop: SHOP.text, paper: 'a4' });
    const read = await readPdf(made.files[0]!.bytes);
    expect(read.pages).toHaveLength(made.drawings.length);
    for (const [i, drawing] of made.drawings.entries()) {
      const lines = drawing.groups.flatMap(({ items }) => items).filter((item) => item.kind === 'line');
      expect(lines.length).toBeGreaterThan(4);
      for (const { from, to } of lines) {
        const at = ({ x, y }: ReadPoint) => ({ x: x / SCALE.x, y: y / SCALE.y });
        expect(read.pages[i]!.lines.some((line) => near(line.from, at(from)) && near(line.to, at(to)))).toBe(true);
      }
    }
    expect(words(read)).toContain(CORRECTED);
    expect(made.printer).toBe(CORRECTED);
  });

  it('proof, ticket and lists are never scaled', async () => {
    for (const document of ['proof', 'ticket', 'blanks', 'labels', 'intake'] as const) {
      const bytes = async (shop: typeof SHOP) => {
        const made = await build(JOB, { shop, documents: [document] });
        if (!made.ok) throw new Error(JSON.stringify(made.problems));
        return made.value.files[0]!.bytes;
      };
      const short = await bytes(SHOP);
      expect(short).toEqual(await bytes(shopWith('x: 1, y: 1')));
      expect(words(await readPdf(short))).not.toContain('corrected');
    }
  });
});

describe('none', () => {
  let named: ReadPdf;
  let asked: ReadPdf;
  beforeAll(async () => {
    named = await pdf('pattern-1.pdf', {}, JOB.replace('paper: a4', 'paper: a4, printer: none'));
    asked = await pdf('pattern-1.pdf', { printer: 'none' });
  });

  it('in the job or on the command corrects for no printer, and says so', () => {
    for (const read of [named, asked]) {
      expect([drawnAt(read, SCALE), drawnAt(read, TRUE)]).toEqual([false, true]);
      for (const page of read.pages) expect(wordsOn(page)).toContain('not corrected for any printer');
    }
  });
});

it('several printers and none named: the sheet says that none is corrected for', async () => {
  const shop = { text: `${SHOP.text.trimEnd().slice(0, -1)}, plotter: {x: 0.98, y: 1}}\n`, file: 'shop.yaml' };
  const read = await pdf('pattern-1.pdf', { shop });
  expect([drawnAt(read, TRUE), words(read).includes('no printer is named')]).toEqual([true, true]);
});

const near = (a: ReadPoint, b: ReadPoint): boolean => Math.abs(a.x - b.x) < 0.001 && Math.abs(a.y - b.y) < 0.001;
