import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from '../../src/index.ts';
import type { PageRecord } from '../../src/paper/manifest.ts';
import { type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { shownWords } from './pattern-words.ts';

const TOP = join(import.meta.dirname, '../..');

export const PAPERS = ['letter', 'a4', 'a3'] as const;

export interface JobText {
  readonly name: string;
  readonly job: string;
  readonly shop?: string;
}

const templates = join(TOP, 'templates');
const shop = readFileSync(join(templates, 'shop.yaml'), 'utf8');

/** Every template. */
export const TEMPLATES: readonly JobText[] = readdirSync(templates)
  .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  .map((name) => ({ name, job: readFileSync(join(templates, name), 'utf8'), shop }));

const heron = join(TOP, 'examples/heron');
export const HERON: JobText = {
  name: 'the heron example',
  job: readFileSync(join(heron, 'job.yaml'), 'utf8'),
  shop: readFileSync(join(heron, 'shop.yaml'), 'utf8'),
};

/** A head whose guide is soon too short, and whose bar then lies in the gaps between neighbours. */
export const BARS: JobText = {
  name: 'three in a row past the guide',
  job: `
mat: {outer: 34 x 14, layers: [{}, {reveal: 1/4}]}
openings: [{size: 7 x 9}, {size: 7 x 9}, {size: 7 x 9}]
arrange: {columns: 3, gap: 1 1/2}
bench: {head: pull}
`,
  shop: `
heads: {pull: {bevel: 45, opening: left, bar: 1.5 in}}
guide: {graduation: 1/16 in, longest: 10 in}
`,
};

const plain = (name: string, mat: string): JobText => ({ name, job: `mat: {${mat}}\nopenings: [{}]\n` });

export const LARGE: readonly JobText[] = [
  plain('31 7/8 x 39 7/8, double', 'outer: 31 7/8 x 39 7/8, border: 4, layers: [{}, {reveal: 1/4}]'),
  plain('48 x 60', 'outer: 48 x 60, border: 5'),
];

export const SMALL: readonly JobText[] = [
  plain('4 x 5 with 1 1/4', 'outer: 4 x 5, border: 1 1/4'),
  plain('4 x 5 with 3/4', 'outer: 4 x 5, border: 3/4'),
  plain('6 x 6 with 1 1/2', 'outer: 6 x 6, border: 1 1/2'),
];

export interface Sheet {
  readonly page: ReadPage;
  readonly record: PageRecord;
}

export interface Printed {
  /** From 1; nothing for what is done on the face. */
  readonly layer: number | undefined;
  readonly sheets: readonly Sheet[];
}

/** Every pattern of a job, its sheets as an independent reader sees them. */
export async function printed(
  { job, shop: text }: JobText,
  paper: string,
  extent: 'whole' | 'corners',
): Promise<readonly Printed[]> {
  const source = text === undefined ? {} : { shop: { text, file: 'shop.yaml' } };
  const built = await build(job, { ...source, paper, extent });
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  const { report, files } = built.value;
  return Promise.all(
    report.patterns.map(async ({ file, layer, pages }): Promise<Printed> => {
      const { pages: read } = await readPdf(files.find(({ name }) => name === file)!.bytes);
      const sheets = pages.flatMap((record): Sheet[] =>
        record.width === undefined ? [] : [{ record, page: read[record.number - 1]! }],
      );
      return { layer: file === 'pattern-face.pdf' ? undefined : layer, sheets };
    }),
  );
}

/** How far words are turned on the board, quarters in degrees. */
export const turned = ({ page, record }: Sheet, words: RegExp): readonly number[] =>
  shownWords(page)
    .filter(({ text }) => words.test(text))
    .map(({ turn }) => (Math.round(turn) - record.rotation + 360) % 360);
