import type { Source } from '../../outputs/solve-job.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { showPath } from '../../problems/show.ts';
import { type Node, plain } from '../../read/text/node.ts';
import { readText } from '../../read/text/text.ts';
import { writeCells } from './cells.ts';
import { WITHOUT } from './fill.ts';
import { jobsFromTable } from './jobs-from-table.ts';

/** A table, and the template that it is rows of. */
export interface WrittenTable {
  readonly table: string;
  readonly template: string;
}

/** In front, where they differ at all. */
const FIRST = ['number', 'title', 'customer'];

/**
 * Some jobs as rows over the first of them: a column for every place in which any other differs. What comes out is read
 * again; jobs that are built otherwise, and so are no rows of one template, are refused. Names are the files', without endings.
 */
export function tableFromJobs(jobs: readonly Source[]): Result<WrittenTable> {
  const read = jobs.map(({ text, file }) => readText(text, file));
  const problems = read.flatMap((each) => (each.ok ? each.value.problems : each.problems));
  const roots = read.flatMap((each) => (each.ok ? [each.value.source.root] : []));
  const [first] = jobs;
  if (problems.length > 0) return fail(problems);
  if (first === undefined) return fail([error('table-empty', [], 'there are no jobs to write', 'name some')]);
  const leaves = roots.map((root) => leavesOf(root));
  const places = new Set(leaves.flatMap((each) => [...each.keys()]));
  const differing = [...places].filter((place) => leaves.some((each) => each.get(place) !== leaves[0]!.get(place)));
  const columns = [
    ...FIRST.filter((place) => differing.includes(place)),
    ...differing.filter((place) => !FIRST.includes(place)),
  ];
  const rows = jobs.map(({ file }, i) => [stemOf(file), ...columns.map((place) => leaves[i]!.get(place) ?? WITHOUT)]);
  const table = writeCells([['file', ...columns], ...rows]);
  const wrong = unlike(table, first, jobs, roots);
  return wrong.length > 0 ? fail(wrong) : succeed({ table, template: first.text });
}

/** Every single value by its place. */
function leavesOf(node: Node, path: Problem['path'] = []): ReadonlyMap<string, string> {
  switch (node.kind) {
    case 'scalar':
      return new Map([[showPath(path), String(node.value)]]);
    case 'list':
      return new Map(node.items.flatMap((item, i) => [...leavesOf(item, [...path, i])]));
    case 'map':
      return new Map([...node.entries].flatMap(([key, { value }]) => [...leavesOf(value, [...path, key])]));
    case 'refused':
      return new Map();
    default:
      return node satisfies never;
  }
}

/** Jobs that the table, read again, would make other jobs of. */
function unlike(table: string, first: Source, jobs: readonly Source[], roots: readonly Node[]): readonly Problem[] {
  const again = jobsFromTable({ text: table, file: 'the table' }, { text: first.text, file: first.file });
  return jobs.flatMap(({ file }, i) => {
    const made = again.ok ? again.value.jobs.find(({ row }) => row === i + 2) : undefined;
    const read = made === undefined ? undefined : readText(made.text, first.file);
    if (read?.ok === true && sameData(read.value.source.root, roots[i]!)) return [];
    const message = `the job is built otherwise than ${first.file}, so that no row of a table over that can say it`;
    return [{ ...error('table-unlike', [], message, 'write tables of jobs that are built alike'), file }];
  });
}

/** Numbers and texts of the same digits are one: a cell does not tell them apart. The order of keys says nothing. */
const sameData = (a: Node, b: Node): boolean => inOrder(plain(a)) === inOrder(plain(b));

const inOrder = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(inOrder).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(String(value));
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${inOrder(each)}`).join(',')}}`;
};

const stemOf = (file: string): string => file.replace(/^.*[\\/]/u, '').replace(/\.(?:ya?ml|json)$/iu, '');
