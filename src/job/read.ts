import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { readDocument } from '../read/document.ts';
import { byUnit } from '../read/fields/by-unit.ts';
import { locate, ordered, written } from '../read/text/issues.ts';
import { readShop } from '../shop/read-shop.ts';
import { NO_SHOP, type Shop } from '../shop/shop.ts';
import { unitsOf } from '../shop/units.ts';
import { type Change, changed } from './change.ts';
import { type Job, jobFrom, jobSchema } from './job.ts';
import { titleFrom } from './title.ts';

export interface JobRequest {
  readonly text: string;
  /** As problems name it; its base name is the title of a job that has none, its ending says YAML or JSON. */
  readonly file: string;
  readonly shopText?: string;
  readonly shopFile?: string;
  /** Tried instead of what the text says in its place. */
  readonly change?: Change;
}

export interface ReadJob {
  readonly job: Job;
  readonly shop: Shop;
  /** Adds file, line and column of the job's text to problems that point into the job and have no place yet. */
  readonly locate: (problems: readonly Problem[]) => Problem[];
  /** Where the job's text holds what a path speaks of: the place itself, a key that stands for it, or the nearest above it. */
  readonly written: (path: Problem['path']) => Problem['path'];
}

const schemaIn = byUnit(jobSchema);

/**
 * The job that a text describes, with what it names looked up in the shop's text and every default filled in; or all
 * problems of both texts, each with file, line and column, in the order of the text.
 */
export function readJob(request: JobRequest): Result<ReadJob> {
  const { shopText, shopFile = 'shop.yaml', change } = request;
  const shop = shopText === undefined ? succeed(NO_SHOP) : readShop({ text: shopText, file: shopFile });
  const read = readDocument(
    request,
    (root) => schemaIn(unitsOf(root)),
    change === undefined ? undefined : (tree) => changed(tree, change),
  );
  if (!read.ok || !shop.ok) return fail([...(read.ok ? [] : read.problems), ...(shop.ok ? [] : shop.problems)]);
  const { value, source } = read.value;
  const made = jobFrom(value, shop.value, unitsOf(source.root), titleFrom(request.file));
  const placed = ordered([...read.warnings, ...made.problems.map((problem) => locate(problem, source))]);
  if (placed.some(({ severity }) => severity === 'error')) return fail(placed);
  return succeed(
    {
      job: made.job,
      shop: shop.value,
      locate: (others) => others.map((problem) => (problem.file === undefined ? locate(problem, source) : problem)),
      written: (path) => written(path, source.root),
    },
    [...shop.warnings, ...placed],
  );
}
