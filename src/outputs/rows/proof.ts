import { letter } from '../../documents/proof/band.ts';
import type { Variant } from '../../documents/proof/model.ts';
import { proof } from '../../documents/proof/proof.ts';
import { type Change, parseVary } from '../../job/change.ts';
import type { Job } from '../../job/job.ts';
import { sheetsDocument } from '../../paper/sheets.ts';
import { defined } from '../../problems/defined.ts';
import { fail, succeed, toldOnce } from '../../problems/problem.ts';
import { money, priceList, priceWarnings } from '../../stock/prices.ts';
import { shownLetterhead } from '../letterhead.ts';
import type { Draw, Drawer, Drawn } from '../output.ts';
import type { ProofRecord } from '../records.ts';
import { lettered, type Solved } from '../solve-job.ts';
import { countWords } from '../taken.ts';
import { openPictures, preparePictures } from './proof-pictures.ts';

/** The same job once for each value that is to be tried. Errors: those of varying. */
export const worked: NonNullable<Drawer<ProofRecord>['worked']> = async (work, { vary }) => {
  if (vary === undefined) return succeed(work);
  const read = parseVary(vary);
  if ('problem' in read) return fail([read.problem]);
  const { again } = work.jobs[0]!;
  const tried = await Promise.all(read.changes.map((change) => lettered((fonts) => again(change, fonts))));
  const problems = toldOnce(tried.flatMap((each) => (each.ok ? [] : each.problems)));
  if (problems.length > 0) return fail(problems);
  const jobs = tried.flatMap((each) => (each.ok ? [each.value] : []));
  return succeed(
    { ...work, jobs },
    tried.flatMap((each) => (each.ok ? each.warnings : [])),
  );
};

/** The proof of the job, or of each way to make it where something is to be varied. Errors: those of reading pictures. */
export const draw: Draw<ProofRecord> = async (made, options, { pictures: source, shopPictures }) => {
  const { work, settled } = made;
  const head = await shownLetterhead(made, shopPictures);
  if (!head.ok) return head;
  const { job } = work.jobs[0]!;
  const opened = await openPictures(
    job.openings.map(({ picture }) => picture),
    source,
  );
  if (!opened.ok) return opened;
  const { date, number, fonts } = settled;
  const variants = work.jobs.map((each) => variantOf(each, number));
  const found = proof(variants, {
    paper: settled.sheet,
    dimensions: options.dimensions === true,
    pictures: opened.value.map((picture) => picture?.size),
    ...defined({ date, letterhead: head.value.letterhead }),
    fonts,
  });
  const pictures = await preparePictures(found.pictures, opened.value);
  if (!pictures.ok) return pictures;
  const { title, sheets } = found;
  const { width, height } = sheets[0]!;
  const record: ProofRecord = {
    sheets: sheets.length,
    paper: { width, height },
    scale: 1 / found.scale,
    variants: variants.map(({ label, prices }) => ({
      ...defined({ label, prices }),
    })),
  };
  const drawn: Drawn<ProofRecord> = {
    record,
    title,
    documents: [
      {
        name: 'proof',
        document: sheetsDocument({ title, subject: 'Proof for the customer', sheets }),
        pages: 'numbered where there are several',
        said: `${countWords(sheets.length, 'sheet')}, scale 1 : ${Number(record.scale.toFixed(2))}`,
        more: variantWords(record),
      },
    ],
    drawings: [],
    drawingFormats: [],
    usual: ['pdf'],
    beds: [],
    pictures: { ...pictures.value, ...head.value.pictures },
    notes: [],
    family: '^proof(?:-\\d+)?\\.(?:pdf|svg|png)$',
  };
  return succeed(drawn, [
    ...head.warnings,
    ...opened.warnings,
    ...pictures.warnings,
    ...variants.flatMap(({ prices }) => priceWarnings(prices)),
  ]);
};

/** One price was agreed on and paid for: of several ways each has its own. */
function variantOf({ mat, job, shop, change }: Solved, number = job.number): Variant {
  const { price: _, ...open } = job;
  const prices = priceList(mat, change === undefined ? job : open, shop);
  return { mat, job, prices, ...defined({ number, label: change === undefined ? undefined : labelOf(change, job) }) };
}

/** A letter for each way, what is different in it and what it comes to. */
const variantWords = ({ variants }: ProofRecord): readonly string[] =>
  variants.flatMap(({ label, prices }, i) => {
    if (label === undefined && prices === undefined) return [];
    const name = label === undefined ? '' : `${letter(i)}  ${label}  `;
    const total = prices?.total === undefined ? 'no total yet' : money(prices.total, prices);
    return [`${name}${prices === undefined ? '' : total}`];
  });

/** A board or a frame by its name, any other value as it was given. */
function labelOf({ path, value }: Change, { mat }: Job): string {
  const [first, second, index, last] = path;
  if (first === 'mat' && second === 'layers' && last === 'board' && path.length === 4) {
    return mat.layers[Number(index)]?.board.name ?? value;
  }
  if (first === 'mat' && second === 'frame') return mat.frame?.name ?? value;
  return value;
}
