import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { byUnit } from '../read/fields/by-unit.ts';
import { MAX_PROBLEMS } from '../read/text/bounds.ts';
import { locate, problemsOf } from '../read/text/issues.ts';
import { plain } from '../read/text/node.ts';
import { readText } from '../read/text/text.ts';
import { NO_SHOP, shopFrom } from '../shop/resolve-shop.ts';
import type { Shop } from '../shop/shop.ts';
import { shopSchema } from '../shop/shop-schema.ts';
import { type Change, changed } from './change.ts';
import type { Job } from './job.ts';
import { jobSchema } from './job-schema.ts';
import { jobFrom } from './resolve-job.ts';
import { titleFrom } from './title.ts';
import { unitsOf } from './units-of.ts';

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
}

const jobSchemaIn = byUnit(jobSchema);
const shopSchemaIn = byUnit(shopSchema);

/** Schemas compile themselves for many values otherwise; here each checks one. */
export const ONCE = { jitless: true };

/**
 * The job that a text describes, with what it names looked up in the shop's text and every default filled in; or all
 * problems of both texts, each with file, line and column, in the order of the text.
 */
export function readJob(request: JobRequest): Result<ReadJob> {
  const shop =
    request.shopText === undefined
      ? succeed(NO_SHOP)
      : readShop({ text: request.shopText, file: request.shopFile ?? 'shop.yaml' });
  const ofShop = shop.ok ? [] : shop.problems;
  const text = readText(request.text, request.file);
  if (!text.ok) return fail([...ordered(text.problems), ...ofShop]);
  const { source, problems } = text.value;
  const units = unitsOf(source.root);
  const tree =
    request.change === undefined ? { tree: plain(source.root) } : changed(plain(source.root), request.change);
  if ('problem' in tree) return fail([locate(tree.problem, source), ...ofShop]);
  const parsed = jobSchemaIn(units).safeParse(tree.tree, ONCE);
  const found = [...problems, ...(parsed.success ? [] : problemsOf(parsed.error.issues, source))];
  if (!parsed.success || !shop.ok || found.length > 0) return fail([...ordered(found), ...ofShop]);
  const made = jobFrom(parsed.data, shop.value, units, titleFrom(request.file));
  const placed = made.problems.map((problem) => locate(problem, source));
  if (placed.some(({ severity }) => severity === 'error')) return fail(ordered(placed));
  return succeed(
    {
      job: made.job,
      shop: shop.value,
      locate: (others) => others.map((problem) => (problem.file === undefined ? locate(problem, source) : problem)),
    },
    [...shop.warnings, ...ordered(placed)],
  );
}

/** The shop that a text describes, with every default filled in; or all its problems. */
export function readShop(request: { readonly text: string; readonly file: string }): Result<Shop> {
  const text = readText(request.text, request.file);
  if (!text.ok) return fail(ordered(text.problems));
  const { source, problems } = text.value;
  const units = unitsOf(source.root);
  const parsed = shopSchemaIn(units).safeParse(plain(source.root), ONCE);
  const found = [...problems, ...(parsed.success ? [] : problemsOf(parsed.error.issues, source))];
  if (!parsed.success || found.length > 0) return fail(ordered(found));
  const made = shopFrom(parsed.data, units);
  const placed = ordered(made.problems.map((problem) => locate(problem, source)));
  return placed.some(({ severity }) => severity === 'error') ? fail(placed) : succeed(made.shop, placed);
}

/** Adds file, line and column of a shop's text, one that can be read, to problems that point into the shop. */
export function shopLocator(text: string, file: string): (problems: readonly Problem[]) => readonly Problem[] {
  const read = readText(text, file);
  return (problems) => (read.ok ? problems.map((problem) => locate(problem, read.value.source)) : problems);
}

/** By place, nothing twice; a flood is cut off and counted. */
export function ordered(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  const once = problems.filter(({ line, column, code, message }) => {
    const place = `${line}:${column} ${code} ${message}`;
    return !seen.has(place) && seen.add(place);
  });
  const sorted = once.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  const last = sorted[MAX_PROBLEMS];
  if (last === undefined) return sorted;
  const { file, line, column } = last;
  const more = error('problems-more', [], `there are ${sorted.length - MAX_PROBLEMS} more problems from here on`, '');
  const place = { ...(file === undefined ? {} : { file }), ...(line === undefined ? {} : { line }) };
  return [...sorted.slice(0, MAX_PROBLEMS), { ...more, ...place, ...(column === undefined ? {} : { column }) }];
}
