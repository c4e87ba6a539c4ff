import { fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { readDocument, type Written } from '../read/document.ts';
import { byUnit } from '../read/fields/by-unit.ts';
import { locate, ordered } from '../read/text/issues.ts';
import { readText } from '../read/text/text.ts';
import { type Shop, shopFrom, shopSchema } from './shop.ts';
import { unitsOf } from './units.ts';

const schemaIn = byUnit(shopSchema);

/** The jobs of a day are of one shop. */
const READ = new Map<string, Result<Shop>>();
const MOST_READ = 4;

/** The shop that a text describes, with every default filled in; or all its problems. */
export function readShop(written: Written): Result<Shop> {
  const key = `${written.file}\n${written.text}`;
  const known = READ.get(key);
  if (known !== undefined) return known;
  const shop = readAnew(written);
  if (READ.size >= MOST_READ) READ.clear();
  READ.set(key, shop);
  return shop;
}

function readAnew(written: Written): Result<Shop> {
  const read = readDocument(written, (root) => schemaIn(unitsOf(root)));
  if (!read.ok) return read;
  const { value, source } = read.value;
  const made = shopFrom(value, unitsOf(source.root));
  const placed = ordered([...read.warnings, ...made.problems.map((problem) => locate(problem, source))]);
  return placed.some(({ severity }) => severity === 'error') ? fail(placed) : succeed(made.shop, placed);
}

/** Adds file, line and column of a shop's text, one that can be read, to problems that point into the shop. */
export function shopLocator(text: string, file: string): (problems: readonly Problem[]) => readonly Problem[] {
  const read = readText(text, file);
  return (problems) => (read.ok ? problems.map((problem) => locate(problem, read.value.source)) : problems);
}
