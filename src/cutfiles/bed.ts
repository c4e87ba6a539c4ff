import type { Point, Size } from '../geometry/point.ts';
import { theNamed } from '../mat/layers.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { Machine } from '../shop/machine.ts';
import { showLength, showSize } from '../units/print.ts';
import type { Units } from '../units/units.ts';
import { turnedSize } from './boards.ts';

/** A blank that is to be laid, as it hangs. */
export interface Blank {
  readonly layer: number;
  readonly name: string;
  readonly size: Size;
}

export interface Placing {
  readonly layer: number;
  readonly at: Point;
  readonly turned: boolean;
}

/** One bed, y down, as large as the machine's or, where that is not known, as what lies on it. */
export interface Bed extends Size {
  readonly placings: readonly Placing[];
}

/** What lies around blanks: `edge` to the end of the bed, `apart` between neighbours. */
export interface Room {
  readonly edge: number;
  readonly apart: Size;
}

const SLACK = 1e-6;

/** One bed for each blank, lying at its lower left corner. All blanks that do not fit are told. */
export function oneEach(
  blanks: readonly Blank[],
  machine: Machine,
  room: Room,
  turn: boolean,
  units: Units,
): Result<readonly Bed[]> {
  const problems = blanks.flatMap((blank) => tooLarge(blank, machine, room, turn ? 'turned' : 'upright', units));
  if (problems.length > 0) return fail(problems);
  return succeed(blanks.map((blank) => shelved([{ blank, turned: turn }], machine.bed, room)[0]!));
}

/** All blanks on as few beds as shelves of them fill, turned where that helps. */
export function together(blanks: readonly Blank[], machine: Machine, room: Room, units: Units): Result<readonly Bed[]> {
  const problems = blanks.flatMap((blank) => tooLarge(blank, machine, room, 'either', units));
  if (problems.length > 0) return fail(problems);
  let best: { readonly beds: readonly Bed[]; readonly cost: number } | undefined;
  for (let ways = 0; ways < 2 ** blanks.length; ways++) {
    const pieces = blanks.map((blank, i) => ({ blank, turned: ((ways >> i) & 1) === 1 }));
    if (pieces.some(({ blank, turned }) => !fits(turnedSize(blank.size, turned), machine.bed, room))) continue;
    const beds = shelved(pieces, machine.bed, room);
    const turnedCount = pieces.filter(({ turned }) => turned).length;
    // Fewer beds first; turned only where that takes; then the less of them.
    const used = Math.max(...beds.map(usedHeight));
    const cost = (beds.length * 100 + turnedCount) * 1e6 + used;
    if (best === undefined || cost < best.cost - SLACK) best = { beds, cost };
  }
  return succeed(best!.beds);
}

interface Piece {
  readonly blank: Blank;
  readonly turned: boolean;
}

const sizeOf = ({ blank, turned }: Piece): Size => turnedSize(blank.size, turned);

/** From the lower end of the bed to the top of the highest blank. */
const usedHeight = (bed: Bed): number => Math.max(...bed.placings.map(({ at }) => bed.height - at.y));

const fits = (size: Size, bed: Size | undefined, { edge }: Room): boolean =>
  bed === undefined || (size.width + 2 * edge <= bed.width + SLACK && size.height + 2 * edge <= bed.height + SLACK);

/** The tallest first, side by side on the first shelf that has room, shelves from the lower end of the bed upwards. */
function shelved(pieces: readonly Piece[], size: Size | undefined, { edge, apart }: Room): readonly Bed[] {
  const tall = [...pieces].sort((a, b) => sizeOf(b).height - sizeOf(a).height);
  const bedWidth = size?.width ?? Number.POSITIVE_INFINITY;
  const bedHeight = size?.height ?? Number.POSITIVE_INFINITY;
  const beds: {
    shelves: { up: number; height: number; along: number }[];
    laid: (Piece & { x: number; up: number })[];
  }[] = [];
  for (const piece of tall) {
    const { width, height } = sizeOf(piece);
    let done = false;
    for (let b = 0; !done; b++) {
      beds[b] ??= { shelves: [], laid: [] };
      const bed = beds[b]!;
      for (const shelf of bed.shelves) {
        if (height > shelf.height + SLACK || shelf.along + width + edge > bedWidth + SLACK) continue;
        bed.laid.push({ ...piece, x: shelf.along, up: shelf.up });
        shelf.along += width + apart.width;
        done = true;
        break;
      }
      if (done) break;
      const last = bed.shelves.at(-1);
      const up = last === undefined ? edge : last.up + last.height + apart.height;
      if (up + height + edge > bedHeight + SLACK) continue;
      bed.shelves.push({ up, height, along: edge + width + apart.width });
      bed.laid.push({ ...piece, x: edge, up });
      done = true;
    }
  }
  return beds.map(({ laid }) => {
    const width = size?.width ?? Math.max(...laid.map((each) => each.x + sizeOf(each).width)) + edge;
    const height = size?.height ?? Math.max(...laid.map((each) => each.up + sizeOf(each).height)) + edge;
    const placings = laid.map((each) => ({
      layer: each.blank.layer,
      turned: each.turned,
      at: { x: each.x, y: height - each.up - sizeOf(each).height },
    }));
    return { width, height, placings: placings.sort((a, b) => a.layer - b.layer) };
  });
}

function tooLarge(
  { layer, name, size }: Blank,
  machine: Machine,
  room: Room,
  way: 'upright' | 'turned' | 'either',
  units: Units,
): readonly Problem[] {
  const { bed, id } = machine;
  if (bed === undefined) return [];
  const lies = turnedSize(size, way === 'turned');
  const other = turnedSize(size, way !== 'turned');
  if (fits(lies, bed, room) || (way === 'either' && fits(other, bed, room))) return [];
  const helps = fits(other, bed, room);
  const missing = (['width', 'height'] as const).flatMap((side) => {
    const more = lies[side] + 2 * room.edge - bed[side];
    return more > SLACK ? [`${showLength(more, units)} ${side === 'width' ? 'across' : 'up'}`] : [];
  });
  const beyond = room.edge > 0 ? `, ${showLength(room.edge, units)} around it for the tool` : '';
  const message = `the bed of ${id} is ${showSize(bed, units)}, too small for ${theNamed(name)} of ${showSize(lies, units)}${beyond}: ${missing.join(' and ')} are missing`;
  const hint = helps
    ? way === 'turned'
      ? 'it fits as it hangs: leave --turn out'
      : 'turned by a quarter it fits: --turn'
    : 'turning it does not help; is the bed right, or can the board be trimmed before (outside: false)?';
  return [error('bed-small', ['mat', 'layers', layer - 1], message, hint)];
}
