import { parsePlace } from '../../job/change.ts';
import { defined } from '../../problems/defined.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { quoted } from '../../problems/quoted.ts';
import { showPath } from '../../problems/show.ts';
import type { Node } from '../../read/text/node.ts';
import { atRow } from './cells.ts';

/** What stands below a heading: values of one place in the job, or the names of the jobs. */
export interface Column {
  readonly heading: string;
  /** From 0. */
  readonly at: number;
  readonly path: Problem['path'];
}

export interface Columns {
  readonly fields: readonly Column[];
  /** Of the column `file`, where there is one. */
  readonly names?: number;
}

const NAMES = 'file';
const HEADINGS = 1;

/**
 * The place that each heading speaks of: a key at the top, a place in full (`openings[0].artwork`), or the last word of a
 * place that the template has once. Capitals do not count for a single word.
 */
export function columnsOf(headings: readonly string[], template: Node, file: string): Result<Columns> {
  const places = keysOf(template);
  const problems: Problem[] = [];
  const fields: Column[] = [];
  let names: number | undefined;
  const refuse = (at: number, problem: Problem): void => {
    problems.push({ ...atRow(problem, file, HEADINGS), column: at + 1 });
  };
  for (const [at, heading] of headings.entries()) {
    // A column without a heading may stay empty; what stands in it is told by its row.
    if (heading === '') continue;
    if (heading.toLowerCase() === NAMES) {
      if (names !== undefined) refuse(at, twice(heading));
      names = at;
      continue;
    }
    const found = placeOf(heading, places);
    if ('problem' in found) refuse(at, found.problem);
    else if (fields.some(({ path }) => showPath(path) === showPath(found.path))) refuse(at, twice(heading));
    else fields.push({ heading, at, path: found.path });
  }
  if (problems.length > 0) return fail(problems);
  return succeed({ fields, ...defined({ names }) });
}

const twice = (heading: string): Problem =>
  error('table-column-twice', [], `the column ${quoted(heading)} stands twice`, 'take one of them out');

type Place = { readonly path: Problem['path'] } | { readonly problem: Problem };

function placeOf(heading: string, places: readonly Problem['path'][]): Place {
  const path = parsePlace(heading);
  if (path === undefined) {
    const message = `${quoted(heading)} is not a place in a job`;
    return { problem: error('table-column', [], message, 'write for example title, artwork or mat.layers[1].board') };
  }
  const [first, ...rest] = path;
  if (rest.some((step) => typeof step === 'string')) return { path };
  const same = places.filter((place) => String(place.at(-1)).toLowerCase() === String(first).toLowerCase());
  const top = same.find((place) => place.length === 1);
  const [only, ...others] = top === undefined ? same : [top];
  if (others.length === 0) return { path: [...(only ?? [String(first)]), ...rest] };
  const known = same.map(showPath);
  const message = `the template has ${quoted(heading)} in ${known.length} places: ${known.join(', ')}`;
  return { problem: error('table-column-which', [], message, 'write the whole place over the column') };
}

/** Every key of a text with what leads to it. */
function keysOf(node: Node, above: Problem['path'] = []): readonly Problem['path'][] {
  switch (node.kind) {
    case 'map':
      return [...node.entries].flatMap(([key, { value }]) => [[...above, key], ...keysOf(value, [...above, key])]);
    case 'list':
      return node.items.flatMap((item, i) => keysOf(item, [...above, i]));
    case 'scalar':
    case 'refused':
      return [];
    default:
      return node satisfies never;
  }
}
