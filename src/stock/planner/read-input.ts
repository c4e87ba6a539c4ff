import { nearest } from '../../problems/nearest.ts';
import { error, type Problem } from '../../problems/problem.ts';

/** The most pieces, over all copies, that one plan takes. */
const MOST_PIECES = 20_000;
/** Longest side of anything, in units of length: 100 m in mm. */
const LONGEST_SIDE = 100_000;

const INPUT_KEYS = ['sheets', 'pieces', 'options'];
const SHEET_KEYS = ['id', 'width', 'height', 'count', 'cost', 'offcut', 'trim'];
const PIECE_KEYS = ['id', 'width', 'height', 'count', 'turn', 'label', 'factoryEdge', 'fallouts'];
const OPTION_KEYS = [
  'kerf',
  'trim',
  'effort',
  'seed',
  'longestCut',
  'leastOffcut',
  'first',
  'offcutCredit',
  'fallouts',
];
const SIDE_KEYS = ['top', 'right', 'bottom', 'left'];
const SIZE_KEYS = ['width', 'height'];

type Path = Problem['path'];
type Keyed = Readonly<Record<string, unknown>>;

interface Range {
  readonly least?: number;
  /** Must be more than this. */
  readonly above?: number;
  readonly most: number;
  readonly whole?: boolean;
}

const SIDE: Range = { above: 0, most: LONGEST_SIDE };
const SMALL: Range = { least: 0, most: LONGEST_SIDE };

const said = (value: unknown): string =>
  typeof value === 'number' || value === undefined ? String(value) : JSON.stringify(value).slice(0, 60);

function rangeOf({ least, above, most, whole }: Range): string {
  const from = above === undefined ? `from ${least}` : `above ${above}`;
  return `${whole === true ? 'a whole number' : 'a number'} ${from} up to ${most}`;
}

function within(value: number, { least, above, most, whole }: Range): boolean {
  return (
    value <= most &&
    (least === undefined || value >= least) &&
    (above === undefined || value > above) &&
    (whole !== true || Number.isInteger(value))
  );
}

/** Reads plain data of which nothing is known, and gathers what is wrong with it. */
class Reader {
  readonly problems: Problem[] = [];

  keyed(value: unknown, path: Path, what: string, keys: readonly string[]): Keyed | undefined {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      const message = `${what} is ${said(value)}, it must be an object`;
      this.problems.push(error('stock-shape', path, message, `give it ${keys.join(', ')}`));
      return undefined;
    }
    for (const key of Object.keys(value)) {
      if (keys.includes(key)) continue;
      const meant = nearest(key, keys);
      const hint = meant === undefined ? `known are ${keys.join(', ')}` : `did you mean ${meant}?`;
      const message = `${what} has no ${JSON.stringify(key.slice(0, 60))}`;
      this.problems.push(error('stock-key-unknown', [...path, key], message, hint));
    }
    return { ...value };
  }

  number(value: unknown, path: Path, range: Range): void {
    if (typeof value === 'number' && within(value, range)) return;
    const message = `${String(path.at(-1))} is ${said(value)}, it must be ${rangeOf(range)}`;
    this.problems.push(error('stock-number', path, message, `write ${rangeOf(range)}`));
  }

  optional(keyed: Keyed, key: string, path: Path, range: Range): void {
    if (keyed[key] !== undefined) this.number(keyed[key], [...path, key], range);
  }

  flag(keyed: Keyed, key: string, path: Path): void {
    const value = keyed[key];
    if (value === undefined || typeof value === 'boolean') return;
    const message = `${key} is ${said(value)}, it must be true or false`;
    this.problems.push(error('stock-flag', [...path, key], message, 'write true or false'));
  }

  oneOf(keyed: Keyed, key: string, path: Path, known: readonly string[]): void {
    const value = keyed[key];
    if (value === undefined || known.some((each) => each === value)) return;
    const message = `${key} is ${said(value)}, it must be ${known.join(' or ')}`;
    this.problems.push(error('stock-choice', [...path, key], message, `write ${known.join(' or ')}`));
  }

  size(value: unknown, path: Path, what: string): Keyed | undefined {
    const size = this.keyed(value, path, what, SIZE_KEYS);
    if (size !== undefined) for (const key of SIZE_KEYS) this.number(size[key], [...path, key], SIDE);
    return size;
  }

  id(value: unknown, path: Path, what: string, seen: Set<string>): void {
    if (typeof value !== 'string' || value === '') {
      const message = `the id of a ${what} is ${said(value)}, it must be a text that is not empty`;
      this.problems.push(error('stock-id', path, message, 'name it'));
    } else if (seen.has(value)) {
      const message = `two ${what}s are called ${said(value)}`;
      this.problems.push(error('stock-id-twice', path, message, 'rename one, or raise the other’s count'));
    } else {
      seen.add(value);
    }
  }

  trim(keyed: Keyed, path: Path): void {
    const value = keyed.trim;
    if (value === undefined || typeof value === 'number') {
      this.optional(keyed, 'trim', path, SMALL);
      return;
    }
    const sides = this.keyed(value, [...path, 'trim'], 'the trim', SIDE_KEYS);
    if (sides !== undefined) for (const side of SIDE_KEYS) this.optional(sides, side, [...path, 'trim'], SMALL);
  }
}

/** What is wrong with the form of an input, all at once: types, ranges, unknown keys, ids that stand twice, prices. */
export function inputProblems(input: unknown): readonly Problem[] {
  const reader = new Reader();
  const keyed = reader.keyed(input, [], 'the input', INPUT_KEYS);
  if (keyed === undefined) return reader.problems;
  readSheets(reader, keyed.sheets);
  readPieces(reader, keyed.pieces);
  if (keyed.options !== undefined) readOptions(reader, keyed.options);
  return reader.problems;
}

function readSheets(reader: Reader, value: unknown): void {
  if (!Array.isArray(value) || value.length === 0) {
    const hint = 'list at least one sheet with id, width and height';
    reader.problems.push(error('stock-sheets-missing', ['sheets'], 'there are no sheets', hint));
    return;
  }
  const seen = new Set<string>();
  const unpriced: number[] = [];
  let priced = false;
  value.forEach((item: unknown, i) => {
    const path = ['sheets', i];
    const sheet = reader.keyed(item, path, 'a sheet', SHEET_KEYS);
    if (sheet === undefined) return;
    reader.id(sheet.id, [...path, 'id'], 'sheet', seen);
    for (const key of SIZE_KEYS) reader.number(sheet[key], [...path, key], SIDE);
    reader.optional(sheet, 'count', path, { least: 0, most: 1_000_000, whole: true });
    reader.optional(sheet, 'cost', path, { least: 0, most: 1_000_000_000 });
    reader.flag(sheet, 'offcut', path);
    reader.trim(sheet, path);
    if (sheet.offcut === true) return;
    if (sheet.cost === undefined) unpriced.push(i);
    else priced = true;
  });
  if (!priced) return;
  for (const i of unpriced) {
    const message = 'this sheet has no price, but others have one';
    reader.problems.push(error('stock-cost-missing', ['sheets', i, 'cost'], message, 'price every sheet, or none'));
  }
}

function readPieces(reader: Reader, value: unknown): void {
  if (!Array.isArray(value) || value.length === 0) {
    const hint = 'list at least one piece with id, width and height';
    reader.problems.push(error('stock-pieces-missing', ['pieces'], 'there are no pieces', hint));
    return;
  }
  const seen = new Set<string>();
  let total = 0;
  value.forEach((item: unknown, i) => {
    const path = ['pieces', i];
    const piece = reader.keyed(item, path, 'a piece', PIECE_KEYS);
    if (piece === undefined) return;
    reader.id(piece.id, [...path, 'id'], 'piece', seen);
    for (const key of SIZE_KEYS) reader.number(piece[key], [...path, key], SIDE);
    reader.optional(piece, 'count', path, { least: 1, most: MOST_PIECES, whole: true });
    reader.flag(piece, 'turn', path);
    reader.flag(piece, 'factoryEdge', path);
    if (piece.label !== undefined && typeof piece.label !== 'string') {
      const message = `the label is ${said(piece.label)}, it must be a text`;
      reader.problems.push(error('stock-label', [...path, 'label'], message, 'put it in quotes'));
    }
    if (piece.fallouts !== undefined) readFallouts(reader, piece, path);
    total += piece.count === undefined ? 1 : Number(piece.count);
  });
  if (total <= MOST_PIECES) return;
  const message = `there are ${total} pieces, at most ${MOST_PIECES} are planned at once`;
  reader.problems.push(error('stock-pieces-too-many', ['pieces'], message, 'plan them in parts'));
}

function readFallouts(reader: Reader, piece: Keyed, path: Path): void {
  const { fallouts } = piece;
  const own = [...path, 'fallouts'];
  if (!Array.isArray(fallouts)) {
    const message = `the fallouts are ${said(fallouts)}, they must be a list of sizes`;
    reader.problems.push(error('stock-shape', own, message, 'write them in brackets'));
    return;
  }
  let area = Number(piece.width) * Number(piece.height);
  fallouts.forEach((value: unknown, i) => {
    const fallout = reader.size(value, [...own, i], 'a fallout');
    if (fallout === undefined) return;
    const [inner, outer] = [fallout, piece].map((size) => [Number(size.width), Number(size.height)] as const);
    area -= inner![0] * inner![1];
    if (!(inner![0] >= outer![0] || inner![1] >= outer![1] || area <= 0)) return;
    const message = `a fallout of ${inner!.join(' × ')} does not drop out of a piece of ${outer!.join(' × ')}`;
    const hint = 'give the rectangles inside the openings';
    reader.problems.push(error('stock-fallout-too-large', [...own, i], message, hint));
  });
}

function readOptions(reader: Reader, value: unknown): void {
  const path = ['options'];
  const options = reader.keyed(value, path, 'the options', OPTION_KEYS);
  if (options === undefined) return;
  reader.optional(options, 'kerf', path, SMALL);
  reader.trim(options, path);
  reader.optional(options, 'effort', path, { least: 0, most: 10_000 });
  reader.optional(options, 'seed', path, { least: 0, most: 2_147_483_647, whole: true });
  reader.optional(options, 'longestCut', path, { above: 0, most: LONGEST_SIDE });
  const least = options.leastOffcut;
  if (typeof least === 'object') reader.size(least, [...path, 'leastOffcut'], 'the least offcut');
  else reader.optional(options, 'leastOffcut', path, SMALL);
  reader.optional(options, 'offcutCredit', path, { least: 0, most: 1 });
  reader.oneOf(options, 'first', path, ['sheets', 'cost']);
  reader.flag(options, 'fallouts', path);
}
