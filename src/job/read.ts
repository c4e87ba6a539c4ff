import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { MAX_PROBLEMS } from './bounds.ts';
import { locate, problemsOf } from './issues.ts';
import { jobFrom } from './job.ts';
import { jobSchema } from './job-schema.ts';
import type { Job, Shop } from './model.ts';
import { plain } from './node.ts';
import { checkShop, NO_SHOP } from './shop.ts';
import { readText } from './text.ts';
import { unitsOf } from './units-of.ts';

export interface JobRequest {
  readonly text: string;
  /** As problems name it; its base name is the job's title where it has none, its ending says YAML or JSON. */
  readonly file: string;
  readonly shopText?: string;
  readonly shopFile?: string;
}

export interface ReadJob {
  readonly job: Job;
  readonly shop: Shop;
  /** Adds file, line and column of the job's text to problems whose path points into it. */
  readonly locate: (problems: readonly Problem[]) => Problem[];
}

/** The job that a text describes, looked up in the shop's; or every problem of both, with its place. */
export function readJob(request: JobRequest): Result<ReadJob> {
  const shop =
    request.shopText === undefined
      ? succeed(NO_SHOP)
      : readShop({ text: request.shopText, file: request.shopFile ?? 'shop.yaml' });
  const text = readText(request.text, request.file);
  const shopProblems = shop.ok ? [] : shop.problems;
  if (!text.ok) return refuse([...text.problems, ...shopProblems]);
  const { source, problems } = text.value;
  const units = unitsOf(source.root);
  const parsed = jobSchema(units).safeParse(plain(source.root), { jitless: true });
  const found = [...problems, ...(parsed.success ? [] : problemsOf(parsed.error.issues, source)), ...shopProblems];
  if (!parsed.success || !shop.ok || found.length > 0) return refuse(found);
  const made = jobFrom(parsed.data, shop.value, units, baseName(request.file));
  const placed = made.problems.map((problem) => locate(problem, source));
  if (placed.some((problem) => problem.severity === 'error')) return refuse(placed);
  return succeed(
    {
      job: made.job,
      shop: shop.value,
      locate: (others) => others.map((problem) => (problem.file === undefined ? locate(problem, source) : problem)),
    },
    [...shop.warnings, ...placed],
  );
}

/** The shop that a text describes. */
export function readShop(request: { readonly text: string; readonly file: string }): Result<Shop> {
  const text = readText(request.text, request.file);
  if (!text.ok) return refuse(text.problems);
  const { source, problems } = text.value;
  const checked = checkShop(source);
  const found = [...problems, ...checked.problems];
  if (checked.shop === undefined || found.length > 0) return refuse(found);
  return succeed(checked.shop);
}

function refuse(problems: readonly Problem[]): Result<never> {
  return fail(problems.slice(0, MAX_PROBLEMS));
}

/** `jobs/heron.yaml` is called heron. */
function baseName(file: string): string {
  const last = file.split(/[/\\]/).at(-1) ?? '';
  return last.replace(/\.(?:ya?ml|json)$/i, '') || 'job';
}
