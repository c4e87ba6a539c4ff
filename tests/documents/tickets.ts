import { make, type OutputId, type OutputOptions, type Records } from '../../src/index.ts';
import { type Solved, solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';
import { FONTS } from '../fonts/loaded.ts';
import { CASES } from '../golden/cases.ts';
import { type ReadPage, readPdf } from '../readers/pdf-lines.ts';
import { SAMPLES as OWN, type Sample } from './ticket-samples.ts';

export const MM_PER_POINT = 25.4 / 72.0;

/** Every template and example, and what none of them has. */
export const SAMPLES: readonly Sample[] = [...CASES.filter(({ name }) => /^(?:template|example)-/.test(name)), ...OWN];

export function solvedSample({ name, job, shop }: Sample): Solved {
  const solved = solveJob(job, {
    fonts: FONTS,
    file: `${name}.yaml`,
    ...(shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } }),
  });
  if (!solved.ok) throw new Error(`${name}: ${solved.problems.map(showProblem).join('\n')}`);
  return solved.value;
}

export async function readSheets<Id extends OutputId>(
  id: Id,
  jobs: readonly Solved[],
  options: OutputOptions = {},
): Promise<{ readonly pages: readonly ReadPage[]; readonly title: string; readonly record: Records[Id] }> {
  const made = await make(id, { jobs }, options);
  if (!made.ok) throw new Error(made.problems.map(showProblem).join('\n'));
  const pdf = await readPdf(made.value.files[0]!.bytes);
  return { pages: pdf.pages, title: pdf.title, record: made.value.record };
}

/** The words of the pages one after the other. */
export const wordsOf = (pages: readonly ReadPage[]): string =>
  pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');

const SIGNS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';
const MM: Readonly<Record<string, number>> = { in: 25.4, mm: 1, cm: 10 };

/** A printed number, with whatever sort of fraction: nothing of the engine is used. */
function amount(text: string): number {
  const plain = [...text.trim()]
    .map((c) => (RAISED.includes(c) ? `${RAISED.indexOf(c)}` : LOWERED.includes(c) ? `${LOWERED.indexOf(c)}` : c))
    .join('')
    .replace('\u2044', '/')
    .replace('\u2009', ' ');
  const sign = Object.keys(SIGNS).find((each) => plain.endsWith(each));
  if (sign !== undefined) return Number(plain.slice(0, -1) || 0) + SIGNS[sign]!;
  const built = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(plain);
  if (built !== null) return Number(built[1] ?? 0) + Number(built[2]) / Number(built[3]);
  if (!/^\d+(?:\.\d+)?$/.test(plain)) throw new Error(`${JSON.stringify(text)} is no number`);
  return Number(plain);
}

export const inMm = (text: string, unit: string): number => amount(text) * MM[unit]!;

/** Every number of a text that names its unit at the end, in mm. */
export function lengthsIn(text: string): number[] {
  const unit = /\b(in|mm|cm)\b/.exec(text)?.[1];
  if (unit === undefined) throw new Error(`${JSON.stringify(text)} names no unit`);
  const numbers = text.match(
    /\d+\u2009[⁰¹²³⁴⁵⁶⁷⁸⁹]+\u2044[₀₁₂₃₄₅₆₇₈₉]+|[⁰¹²³⁴⁵⁶⁷⁸⁹]+\u2044[₀₁₂₃₄₅₆₇₈₉]+|\d*[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?/gu,
  );
  return (numbers ?? []).map((each) => inMm(each, unit));
}
