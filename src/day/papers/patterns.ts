import { type Document, joinDocuments } from '../../drawing/document.ts';
import { loadFonts } from '../../fonts/load.ts';
import { userTexts } from '../../job/printed-texts.ts';
import type { JobDocument } from '../../outputs/everything.ts';
import type { Solved } from '../../outputs/solve-job.ts';
import { type Paper, papersOf } from './paper.ts';

/** The patterns of one job, as data that can be handed from thread to thread. */
export interface JobPatterns {
  readonly title: string;
  readonly number?: string;
  /** Which of the day's jobs it is, from 1: what tells its pages from others' where it has no number. */
  readonly place: number;
  /** What a user wrote on them: rare characters want fonts of their own. */
  readonly texts: readonly string[];
  readonly documents: readonly Pick<JobDocument, 'said' | 'document'>[];
}

export const patternsIn = (documents: readonly JobDocument[]): readonly JobDocument[] =>
  documents.filter(({ output }) => output === 'pattern');

export const textsOf = ({ job }: Pick<Solved, 'job'>): readonly string[] => userTexts(job).map(({ text }) => text);

/** The patterns of some jobs as one document: pages are called by the job and their own name, and stand below both in the outline. */
function joinedPatterns(jobs: readonly JobPatterns[]): Document {
  const said = { title: `Patterns of ${jobs.length === 1 ? 'one job' : `${jobs.length} jobs`}`, language: 'en' };
  return joinDocuments(jobs.map(ofOneJob), { ...said, subject: 'Full-scale patterns' });
}

function ofOneJob({ title, number, place, documents }: JobPatterns): Document {
  const head = number === undefined ? title : `${number} ${title}`;
  const known = { title: head, subject: head, language: 'en' };
  const [only, ...more] = documents.map(({ said, document }) => ({ ...document, title: said }));
  if (only === undefined) return { ...known, layers: [], pages: [] };
  const joined = more.length === 0 ? { ...only, ...known } : joinDocuments([only, ...more], known);
  const mark = number ?? `${place}`;
  return { ...joined, pages: joined.pages.map((page) => ({ ...page, label: `${mark} ${page.label}` })) };
}

/** Jobs whose patterns together have no more pages than a file may make one file. */
export async function patternPapers(name: string, jobs: readonly JobPatterns[]): Promise<readonly Paper[]> {
  const texts = jobs.flatMap((job) => [...job.texts, job.number ?? '']);
  return papersOf(name, joinedPatterns(jobs), { fonts: await loadFonts(texts, { files: true }) });
}
