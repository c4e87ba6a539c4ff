/**
 * The page of messages: every code that a problem or a warning can have, with what it means and what to do. Tests compare
 * the tables with the sources, the page with the tables, and find for every code a test that makes it appear.
 */
import { CODES as BENCH } from '../bench/codes.ts';
import { CODES as CALIBRATE } from '../calibrate/codes.ts';
import { CODES as CUT_FILES } from '../cutfiles/codes.ts';
import { CODES as DAY } from '../day/codes.ts';
import { CODES as DOCUMENTS } from '../documents/codes.ts';
import { CODES as JOB } from '../job/codes.ts';
import { CODES as MAT } from '../mat/codes.ts';
import { CODES as MAKING } from '../outputs/codes.ts';
import { CODES as TILING } from '../paper/codes.ts';
import { CODES as PAPERS } from '../papers/codes.ts';
import { CODES as PICTURES } from '../pictures/codes.ts';
import type { Codes } from '../problems/code-entry.ts';
import { CODES as READ } from '../read/codes.ts';
import { CODES as SETTLE } from '../settle/codes.ts';
import { CODES as SHOP } from '../shop/codes.ts';
import { CODES as STOCK } from '../stock/codes.ts';
import { CODES as WRITERS } from '../writers/codes.ts';

/** In the order in which a job goes through the program. */
export const SECTIONS: readonly (readonly [title: string, codes: Codes])[] = [
  ['Reading a job, a shop or readings', { ...READ, ...SHOP, ...JOB }],
  ['Working out the mat', MAT],
  ['Strokes and stacking', BENCH],
  ['Files for machines', CUT_FILES],
  ['Calibration', CALIBRATE],
  ['Planning stock', STOCK],
  ['Pictures', PICTURES],
  ['Patterns and other documents', { ...DOCUMENTS, ...MAKING }],
  ['A day’s work', DAY],
  ['Paper, sheets and files', { ...PAPERS, ...SETTLE, ...TILING, ...WRITERS }],
];

const HEAD = `# Messages: every problem and warning

Generated from the tables beside the code (\`npm run reference\`). With \`--json\` every problem and every warning carries
its code; problems end with exit code 2 and nothing is written, warnings do not.
`;

export function messagesPage(): string {
  const tables = SECTIONS.map(([title, codes]) => {
    const rows = Object.keys(codes)
      .sort()
      .map((code) => `| \`${code}\` | ${codes[code]!.means} | ${codes[code]!.remedy} |`.replaceAll(' || ', ' \\|\\| '));
    return [`\n## ${title}\n`, '| code | what it means | what to do |', '|---|---|---|', ...rows, ''].join('\n');
  });
  return HEAD + tables.join('');
}
