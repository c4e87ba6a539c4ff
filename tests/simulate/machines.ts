import fc from 'fast-check';
import { type BuildOptions, build } from '../../src/index.ts';
import type { P } from '../cutfiles/points.ts';
import { waysOf } from '../cutfiles/read-svg.ts';
import { chainPoints, readDxf } from '../readers/dxf.ts';
import { plot } from '../readers/hpgl.ts';
import { length, minus } from './figure.ts';
import { cot, type Head, type Wanted } from './jobs.ts';

export interface Way {
  readonly operation: string;
  readonly closed: boolean;
  /** As the board hangs, seen from the face, mm from its own upper left corner. */
  readonly points: readonly P[];
}

/** What a machine gets for one layer, and what is known of how the blank lies on it. */
export interface Bed {
  readonly layer: number;
  readonly ways: readonly Way[];
  readonly width: number;
  readonly height: number;
  readonly up: 'back' | 'face';
  readonly turned: boolean;
  /** Of a bevel head: how its blade stands. */
  readonly tilts: readonly { readonly angle: number; readonly lean?: 'left' | 'right' }[];
}

export type Format = 'svg' | 'dxf' | 'hpgl';

export interface Machine {
  readonly words: string;
  readonly format: Format;
  readonly outside: boolean;
}

const places = {
  format: fc.constantFrom<Format>('svg', 'dxf', 'hpgl'),
  up: fc.constantFrom('back' as const, 'face' as const),
  outside: fc.boolean(),
};

/** A plotter's file knows no layers, so that there only the openings are cut. */
const settled = <T extends { format: Format; outside: boolean }>(given: T): T =>
  given.format === 'hpgl' ? { ...given, outside: false } : given;

const machineOf = (kind: string, more: string, given: { format: Format; up: string; outside: boolean }): Machine => ({
  format: given.format,
  outside: given.outside,
  words: `machines: {m: {kind: ${kind}, format: ${given.format}, up: ${given.up}, outside: ${given.outside}, marks: false, notes: false, ${more}}}\n`,
});

export const laser = fc
  .record({ ...places, x: fc.constantFrom(0.1, 0.2, 0.3), y: fc.constantFrom(0.1, 0.2, 0.3), tabs: fc.boolean() })
  .map(settled)
  .map((given) => ({
    ...machineOf(
      'laser',
      `kerf: {x: ${given.x}, y: ${given.y}}${given.tabs ? ', tabs: {count: 4, width: 0.8}' : ''}`,
      given,
    ),
    kerf: { x: given.x, y: given.y },
    tabs: given.tabs ? 0.8 : undefined,
  }));

export const knife = fc
  .record({
    ...places,
    offset: fc.constantFrom(0.25, 0.5, 0.9),
    towards: fc.double({ min: 0, max: 6.28, noNaN: true }),
  })
  .map(settled)
  .map((given) => ({
    ...machineOf('knife', `offset: ${given.offset}`, given),
    offset: given.offset,
    towards: given.towards,
  }));

export const bevelHead = (head: Head, format: Format, up: 'back' | 'face'): Machine =>
  machineOf('bevel', `opening: ${head.opening}, start: ${head.start}, stop: ${head.stop}, overrun: ${head.overrun}`, {
    format,
    up,
    outside: false,
  });

/** How far what a format holds may be off, mm: chords and arcs within 0.01, a plotter's unit of 0.025. */
export const ALLOWED: Readonly<Record<Format, number>> = { svg: 0.02, dxf: 0.03, hpgl: 0.045 };

/** The files of a job for a machine, read by other readers; undefined where the job is refused. */
export async function beds(
  { text, layers }: Pick<Wanted, 'text' | 'layers'>,
  machine: Machine,
  options: BuildOptions = {},
): Promise<readonly Bed[] | undefined> {
  const shop = { text: `units: mm\nheads: {h: {bevel: 45}}\n${machine.words}`, file: 'shop.yaml' };
  const built = await build(text, { shop, file: 'job.yaml', documents: ['cutfile'], machine: 'm', ...options });
  if (!built.ok) return undefined;
  const { files, report } = built.value;
  return report.cutfiles!.flatMap((record): readonly Bed[] => {
    const bytes = files.find(({ name }) => name === record.file)!.bytes;
    const [board] = record.boards;
    if (board === undefined || layers.length < board.layer) throw new Error('a file without a board of the job');
    const ways = readWays(new TextDecoder().decode(bytes), machine.format, record.height);
    const back = (p: P): P => {
      const [x, y] = [p.x - board.x, p.y - board.y];
      // A quarter clockwise: what hangs at the left lies at the top.
      const hung = board.turned ? { x: y, y: board.width - x } : { x, y };
      const width = board.turned ? board.height : board.width;
      return record.up === 'back' ? { x: width - hung.x, y: hung.y } : hung;
    };
    const [width, height] = board.turned ? [board.height, board.width] : [board.width, board.height];
    return [
      {
        layer: board.layer,
        ways: ways.map((way) => ({ ...way, points: way.points.map(back) })),
        width,
        height,
        up: record.up,
        turned: board.turned,
        tilts: record.operations.flatMap(({ tilts }) => tilts ?? []),
      },
    ];
  });
}

function readWays(text: string, format: Format, height: number): readonly Way[] {
  switch (format) {
    case 'svg':
      return waysOf(text).map(({ layer, closed, points }) => ({ operation: layer, closed, points }));
    case 'dxf': {
      const { lines, polylines } = readDxf(text);
      return [...lines, ...polylines].map((chain) => {
        const points = chainPoints(chain, 0.5).map(({ x, y }) => ({ x, y: height - y }));
        if (chain.closed) points.pop();
        return { operation: chain.layer.toLowerCase(), closed: chain.closed, points };
      });
    }
    case 'hpgl':
      return plot(text).lines.map(({ points }) => {
        const all = points.map(([x, y]) => ({ x: x / 40, y: height - y / 40 }));
        const closed = all.length > 2 && length(minus(all[0]!, all.at(-1)!)) < 1e-9;
        return { operation: 'inner', closed, points: closed ? all.slice(0, -1) : all };
      });
    default: {
      const never: never = format;
      throw new TypeError(`unknown format ${String(never)}`);
    }
  }
}

/**
 * The tip of a knife that trails its axis, drawn after it along its own edge; `towards` is where it points when it is let
 * down. While the axis runs straight on, the angle between blade and travel falls as the tractrix has it:
 * tan(angle / 2) by a factor of e for each length of the offset.
 */
export function dragged(axis: readonly P[], offset: number, towards: number): P[] {
  // From the axis back to the tip.
  let trail = towards;
  const tip = (at: P): P => ({ x: at.x + offset * Math.cos(trail), y: at.y + offset * Math.sin(trail) });
  const found: P[] = [tip(axis[0]!)];
  for (const [i, to] of axis.slice(1).entries()) {
    const from = axis[i]!;
    const long = length(minus(to, from));
    if (long < 1e-9) continue;
    const travel = Math.atan2(to.y - from.y, to.x - from.x);
    const off = (): number => Math.atan2(Math.sin(trail - travel - Math.PI), Math.cos(trail - travel - Math.PI));
    const count = Math.abs(off()) < 0.01 ? Math.ceil(long / 20) : Math.ceil(long / 0.1);
    for (let n = 1; n <= count; n++) {
      trail = travel + Math.PI + 2 * Math.atan(Math.tan(off() / 2) * Math.exp(-long / count / offset));
      found.push(tip({ x: from.x + ((to.x - from.x) * n) / count, y: from.y + ((to.y - from.y) * n) / count }));
    }
  }
  return found;
}

/**
 * What a tilted blade cuts that is led along a way: from `start` ahead of the head's place to `stop` ahead of it, in the
 * surface that lies up; in the one below it comes out aside, by the thickness and the cotangent of its angle.
 */
export function tilted(
  way: readonly P[],
  { start, stop }: Pick<Head, 'start' | 'stop'>,
  { angle, lean }: Bed['tilts'][number],
  thickness: number,
  mirroredView: boolean,
): { readonly up: readonly P[]; readonly down: readonly P[] } {
  const up = part(way, start, stop);
  const aside = lean === undefined ? 0 : thickness * cot(angle);
  // Seen from the machine's side; in a mirror image hands change places.
  const sign = (lean === 'left') === mirroredView ? 1 : -1;
  const down = up.map((p, i) => {
    const [a, b] = [up[Math.max(0, i - 1)]!, up[Math.min(up.length - 1, i + 1)]!];
    const long = length(minus(b, a));
    return { x: p.x - (sign * aside * (b.y - a.y)) / long, y: p.y + (sign * aside * (b.x - a.x)) / long };
  });
  return { up, down };
}

/** A way from so far behind its beginning to so far past its end, gone on straight where it is longer than the way. */
function part(way: readonly P[], from: number, past: number): readonly P[] {
  const on = (p: P, q: P, by: number): P => {
    const long = length(minus(q, p));
    return { x: q.x + ((q.x - p.x) * by) / long, y: q.y + ((q.y - p.y) * by) / long };
  };
  const long = [on(ahead(way), way[0]!, 10), ...way, on(ahead(way.toReversed()), way.at(-1)!, 10)];
  const total = way.slice(1).reduce((sum, p, i) => sum + length(minus(p, way[i]!)), 0);
  const found: P[] = [];
  let at = -10;
  for (const [i, q] of long.slice(1).entries()) {
    const p = long[i]!;
    const step = length(minus(q, p));
    const [a, b] = [Math.max(0, from - at), Math.min(step, total + past - at)];
    at += step;
    if (step < 1e-12 || a > b - 1e-9) continue;
    const between = (k: number): P => ({ x: p.x + ((q.x - p.x) * k) / step, y: p.y + ((q.y - p.y) * k) / step });
    const count = Math.max(1, Math.ceil((b - a) / 2));
    for (let n = found.length === 0 ? 0 : 1; n <= count; n++) found.push(between(a + ((b - a) * n) / count));
  }
  return found;
}

/** A point ahead of a way's first along its tangent there: on a bend, drawn in equal chords, that leaves the first of them by half the turn. */
function ahead([p, q, r]: readonly P[]): P {
  if (r === undefined) return q!;
  const [u, v] = [minus(q!, p!), minus(r, q!)];
  const turn = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  const even = Math.max(length(u), length(v)) < 1.5 * Math.min(length(u), length(v));
  if (!even || Math.abs(turn) > 0.3) return q!;
  const [cos, sin] = [Math.cos(turn / 2), Math.sin(turn / 2)];
  return { x: p!.x + u.x * cos + u.y * sin, y: p!.y - u.x * sin + u.y * cos };
}
