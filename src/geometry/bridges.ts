import { contains } from './box.ts';
import { type Piece, partOf, piecesOf, pointAt } from './curves.ts';
import { pathBox } from './extent.ts';
import { signedArea } from './measure.ts';
import { meetings, selfCrossing } from './meetings.ts';
import { isInside, type Outline, outlineOf } from './near.ts';
import { type Path, reversed, type Segment } from './path.ts';
import { dot, minus, type Point, plus, times } from './point.ts';

/** A window with the islands inside it: what would fall out with nothing to hold it. */
export interface Window {
  /** Clockwise as the eye sees it. */
  readonly outside: Path;
  /** Each counterclockwise. */
  readonly islands: readonly Path[];
}

export type Windows =
  | { readonly ok: true; readonly windows: readonly Window[] }
  | { readonly ok: false; readonly why: 'crossing' | 'nested' };

/** Sorts closed outlines into windows and their islands, whichever way each of them runs. */
export function windowsOf(contours: readonly Path[]): Windows {
  const known = contours.map((path) => ({ path, outline: outlineOf(path), box: pathBox(path) }));
  for (const [i, a] of known.entries()) {
    for (const b of known.slice(i + 1)) {
      const met = a.outline.pieces.some((p) => b.outline.pieces.some((q) => meetings(p, q).length > 0));
      if (met) return { ok: false, why: 'crossing' };
    }
  }
  const around = known.map(({ path, box }) =>
    known.filter((other) => other.path !== path && contains(other.box, box) && isInside(other.outline, path.start)),
  );
  if (around.some((others) => others.length > 1)) return { ok: false, why: 'nested' };
  const windows = known.flatMap(({ path }, i): Window[] => {
    if (around[i]!.length > 0) return [];
    const islands = known.flatMap(({ path: inner }, k) => (around[k]![0]?.path === path ? [turned(inner, false)] : []));
    return [{ outside: turned(path, true), islands }];
  });
  return { ok: true, windows };
}

const turned = (path: Path, clockwise: boolean): Path => (signedArea(path) > 0 === clockwise ? path : reversed(path));

/** Where a contour is cut: segment and parameter on it, in the order of its travel. */
interface Cut {
  readonly contour: number;
  readonly at: number;
  readonly point: Point;
}

/** A strip of board that is left standing from an island to another contour. */
interface Strip {
  /** Contours at its two ends: the island's first. */
  readonly ends: readonly [number, number];
  /** On both of its sides, at both ends. */
  readonly cuts: readonly [readonly [Cut, Cut], readonly [Cut, Cut]];
  readonly middle: Point;
  readonly way: Point;
  /** How much longer its ends are than it is wide, and how far it lies from the island's middle: the least is best. */
  readonly slant: number;
}

/** The outline is contour 0, the islands follow. */
const OUTSIDE = 0;
const UP: Point = { x: 0, y: -1 };
const DOWN: Point = { x: 0, y: 1 };
const LEFT: Point = { x: -1, y: 0 };
const RIGHT: Point = { x: 1, y: 0 };
/** Tried from the island's middle to either side, as shares of its size. */
const ASIDE = [0, 0.12, -0.12, 0.25, -0.25, 0.36, -0.36];

export interface Bridged {
  /** Simple closed outlines without islands, clockwise. */
  readonly parts: readonly Path[];
  readonly bridges: number;
}

/**
 * Ties every island to the board around the window by straight bridges `width` wide: one up and one down through its
 * middle where there is room, as in a stencil, else to its sides. Undefined where an island has no room for one.
 */
export function bridged({ outside, islands }: Window, width: number): Bridged | undefined {
  if (islands.length === 0) return { parts: [outside], bridges: 0 };
  const contours = [outside, ...islands];
  const outlines = contours.map(outlineOf);
  const strips: Strip[] = [];
  /** For each contour one that it hangs together with. */
  const tied = contours.map((_, i) => i);
  const rootOf = (i: number): number => (tied[i] === i ? i : rootOf(tied[i]!));
  const tie = (island: number, ways: readonly Point[]): void => {
    for (const way of ways) {
      const found = ASIDE.flatMap((share) => stripFrom(contours, outlines, island, way, share, width) ?? [])
        .filter((strip) => !strips.some((other) => inTheWay(other, strip, width)))
        .sort((a, b) => a.slant - b.slant)
        .find((strip) => withStrips(contours, [strip])?.every((part) => selfCrossing(part) === undefined));
      if (found === undefined) continue;
      strips.push(found);
      tied[rootOf(found.ends[1])] = rootOf(island);
    }
  };
  for (const island of contours.keys()) if (island !== OUTSIDE) tie(island, [UP, DOWN]);
  for (const island of contours.keys()) if (rootOf(island) !== rootOf(OUTSIDE)) tie(island, [LEFT, RIGHT]);
  if (contours.some((_, i) => rootOf(i) !== rootOf(OUTSIDE))) return undefined;
  const parts = withStrips(contours, strips);
  const whole = parts?.every((part) => signedArea(part) > 0 && selfCrossing(part) === undefined);
  return parts === undefined || whole !== true ? undefined : { parts, bridges: strips.length };
}

/** Strips that lie over one another, or tie the same two together from the same side. */
function inTheWay(a: Strip, b: Strip, width: number): boolean {
  if (a.ends[0] === b.ends[1] && a.ends[1] === b.ends[0] && a.ends[1] !== OUTSIDE) return true;
  const across = Math.abs(a.way.x) > 0 === Math.abs(b.way.x) > 0;
  const gap = minus(a.middle, b.middle);
  if (!across) return Math.hypot(gap.x, gap.y) < 2 * width;
  const aside = Math.abs(a.way.x) > 0 ? Math.abs(gap.y) : Math.abs(gap.x);
  const corners = (s: Strip): readonly number[] => s.cuts.flat().map((cut) => dot(cut.point, a.way));
  const [p, q] = [corners(a), corners(b)];
  const apart = Math.min(...p) > Math.max(...q) || Math.min(...q) > Math.max(...p);
  return aside < 2 * width && !apart;
}

function stripFrom(
  contours: readonly Path[],
  outlines: readonly Outline[],
  island: number,
  way: Point,
  share: number,
  width: number,
): Strip | undefined {
  const box = pathBox(contours[island]!);
  const side: Point = { x: -way.y, y: way.x };
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const along = plus(middle, times(side, share * (side.x === 0 ? box.height : box.width)));
  const begin = startWithin(outlines[island]!, along, way, Math.max(box.width, box.height), width);
  if (begin === undefined) return undefined;
  const long = 2 * Math.max(...contours.map((path) => Math.max(pathBox(path).width, pathBox(path).height)));
  const rays = ([-1, 1] as const).map((sign) => {
    const from = plus(begin, times(side, (sign * width) / 2));
    const ray: Piece = { from, segment: { kind: 'line', to: plus(from, times(way, long)) } };
    return contours
      .flatMap((path, contour) =>
        piecesOf(path).flatMap((piece, i) =>
          meetings(piece, ray).map(({ a, b }) => ({ cut: { contour, at: i + a, point: pointAt(piece, a) }, b })),
        ),
      )
      .sort((p, q) => p.b - q.b)
      .filter((each, i, all) => i === 0 || each.b - all[i - 1]!.b > 1e-9);
  });
  const [near, far] = [0, 1].map((k) => rays.map((ray) => ray[k]?.cut));
  if ([...near!, ...far!].some((cut) => cut === undefined)) return undefined;
  const [a, b] = near as [Cut, Cut];
  const [c, d] = far as [Cut, Cut];
  if (a.contour !== island || b.contour !== island || c.contour === island || c.contour !== d.contour) return undefined;
  const across = [
    acrossStrip(contours[island]!, a, b, begin, side, width),
    acrossStrip(contours[c.contour]!, c, d, begin, side, width),
  ];
  if (across[0] === undefined || across[1] === undefined) return undefined;
  return {
    slant: (across[0] + across[1]) / width + 6 * Math.abs(share),
    ends: [island, c.contour],
    cuts: [
      [a, b],
      [c, d],
    ],
    middle: plus(times(plus(a.point, c.point), 0.5), times(side, width / 2)),
    way,
  };
}

/** How long a contour is between the two sides of a strip; undefined where it leaves the strip on the way. */
function acrossStrip(path: Path, a: Cut, b: Cut, begin: Point, side: Point, width: number): number | undefined {
  const short = [arcBetween(path, a, b), arcBetween(path, b, a)].sort((p, q) => lengthOf(p) - lengthOf(q))[0]!;
  const inside = short.segments.every((segment) => {
    const points = segment.kind === 'cubic' ? [segment.c1, segment.c2, segment.to] : [segment.to];
    return points.every((p) => Math.abs(dot(minus(p, begin), side)) <= width / 2 + 1e-6);
  });
  return inside ? lengthOf(short) : undefined;
}

/** A point of the line through `along` with room for the whole width inside the island, as near to its middle as may be. */
function startWithin(island: Outline, along: Point, way: Point, size: number, width: number): Point | undefined {
  const side: Point = { x: -way.y, y: way.x };
  for (const share of [0, 0.1, -0.1, 0.2, -0.2, 0.3, -0.3, 0.4, -0.4]) {
    const p = plus(along, times(way, share * size));
    if ([-0.5, 0, 0.5].every((k) => isInside(island, plus(p, times(side, k * width))))) return p;
  }
  return undefined;
}

/** A stretch of a contour between two cuts. */
interface Arc {
  readonly from: Cut;
  readonly to: Cut;
  readonly segments: readonly Segment[];
}

/** The outlines that are left once every strip stands: contours lose what runs across a strip and gain its sides. */
function withStrips(contours: readonly Path[], strips: readonly Strip[]): readonly Path[] | undefined {
  const partner = new Map<Cut, Cut>();
  for (const { cuts } of strips) {
    const [[a, b], [c, d]] = cuts;
    for (const [one, other] of [
      [a, c],
      [b, d],
    ] as const) {
      partner.set(one, other);
      partner.set(other, one);
    }
  }
  const arcs: Arc[] = [];
  const parts: Path[] = [];
  for (const [contour, path] of contours.entries()) {
    const own = [...partner.keys()].filter((cut) => cut.contour === contour).sort((p, q) => p.at - q.at);
    if (own.length === 0) parts.push(path);
    for (const [i, from] of own.entries()) arcs.push(arcBetween(path, from, own[(i + 1) % own.length]!));
  }
  for (const { cuts } of strips) {
    for (const pair of cuts) {
      // Of the two arcs between the ends of a strip the shorter one runs across it.
      const across = arcs.filter(({ from, to }) => pair.includes(from) && pair.includes(to) && from !== to);
      const short = across.sort((p, q) => lengthOf(p) - lengthOf(q))[0];
      if (short === undefined) return undefined;
      arcs.splice(arcs.indexOf(short), 1);
    }
  }
  while (arcs.length > 0) {
    const first = arcs.shift()!;
    const segments: Segment[] = [...first.segments];
    let last = first;
    for (;;) {
      const next = partner.get(last.to)!;
      segments.push({ kind: 'line', to: next.point });
      if (next === first.from) break;
      const k = arcs.findIndex(({ from }) => from === next);
      if (k < 0) return undefined;
      last = arcs.splice(k, 1)[0]!;
      segments.push(...last.segments);
    }
    parts.push({ start: first.from.point, segments, closed: true });
  }
  return parts;
}

function arcBetween(path: Path, from: Cut, to: Cut): Arc {
  const pieces = piecesOf(path);
  const segments: Segment[] = [];
  const end = to.at > from.at ? to.at : to.at + pieces.length;
  for (let i = Math.floor(from.at); i < end; i++) {
    const [t0, t1] = [Math.max(0, from.at - i), Math.min(1, end - i)];
    if (t1 - t0 < 1e-9) continue;
    const piece = pieces[i % pieces.length]!;
    segments.push(t0 === 0 && t1 === 1 ? piece.segment : partOf(piece, t0, t1).segment);
  }
  const last = segments.at(-1);
  if (last !== undefined) segments[segments.length - 1] = { ...last, to: to.point };
  return { from, to, segments };
}

/** Of its chords, from end to end. */
function lengthOf({ from, segments }: Arc): number {
  let at = from.point;
  return segments.reduce((sum, { to }) => {
    const way = Math.hypot(to.x - at.x, to.y - at.y);
    at = to;
    return sum + way;
  }, 0);
}
