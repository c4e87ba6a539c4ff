/**
 * The community print room hangs its linocuts in the frames of a travelling show, all of them 400 × 500 mm inside. From a
 * list of the prints this makes the pattern of each mat, a picture of each piece, and sizes.csv for the one who cuts boards:
 *
 *     node show.mts prints.csv OUT      (Node 22.18 and later; older ones after tsc)
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { faceSvg, make, type Problem, type Result, type Solved, showProblem, solveJob } from 'matwright';

interface Print {
  readonly title: string;
  /** Of the printed image, mm. */
  readonly width: number;
  readonly height: number;
}

/** Lines of `title,width,height` below a head; a title with commas stands in quotes. */
function printsIn(csv: string): readonly Print[] {
  return csv
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => {
      const [, quoted, plain, width, height] = /^(?:"([^"]*)"|([^,"]*)),([\d.]+),([\d.]+)$/.exec(line) ?? [];
      const title = quoted ?? plain;
      if (title === undefined) throw new Error(`not title,width,height: ${line}`);
      return { title, width: Number(width), height: Number(height) };
    });
}

const jobOf = ({ title, width, height }: Print): string =>
  JSON.stringify({
    title,
    units: 'mm',
    mat: { frame: { inside: [width > height ? 500 : 400, width > height ? 400 : 500], clearance: 3, lip: 6, width: 20 } },
    openings: [{ artwork: [width, height], overlap: 4 }],
    print: { paper: 'a4' },
  });

/** What a call gave; the problems, a line each, where it gave none. */
function given<T>(result: Result<T>): T {
  const told: readonly Problem[] = result.ok ? result.warnings : result.problems;
  for (const problem of told) console.error(showProblem(problem));
  if (!result.ok) process.exit(2);
  return result.value;
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

function sizes({ title }: Print, { report }: Solved): string {
  const { width, height } = report.outer;
  return [quoted(title), ...[width, height].map((mm) => mm.toFixed(1))].join(',');
}

const [list, out] = process.argv.slice(2);
if (list === undefined || out === undefined) {
  console.error('node show.mts prints.csv OUT');
  process.exit(2);
}

const rows = ['title,blank width mm,blank height mm'];
for (const print of printsIn(readFileSync(list, 'utf8'))) {
  const solved = given(solveJob(jobOf(print), { file: print.title }));
  const { files } = given(await make('pattern', { jobs: [solved] }));
  const folder = join(out, print.title.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-'));
  mkdirSync(folder, { recursive: true });
  for (const { name, bytes } of files) writeFileSync(join(folder, name), bytes);
  writeFileSync(join(folder, 'face.svg'), given(await faceSvg(solved)));
  rows.push(sizes(print, solved));
}
writeFileSync(join(out, 'sizes.csv'), `${rows.join('\n')}\n`);
