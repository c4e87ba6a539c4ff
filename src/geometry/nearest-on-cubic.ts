import { distance, type Point } from './point.ts';

/** A stretch that could come nearer by less than this is not looked at further, mm. */
const GAIN = 1e-9;
/** Halved this often a stretch is shorter than anything that counts. */
const DEEPEST = 44;

/** Handles of a cubic about the point that is asked for: x0, y0 … x3, y3. */
export type Handles = readonly [number, number, number, number, number, number, number, number];

/**
 * From a point to the nearest of a cubic; `atMost`, or a little more, where nothing is nearer than that.
 *
 * The square of the distance is a polynomial of degree 6 and its slope one of degree 5. In Bernstein form the least
 * coefficient of the first bounds it from below, and the signs of the second's say how often it can turn (Descartes): a
 * stretch is left out where it cannot win, solved where it turns once, and halved elsewhere. So hairpins, loops and cusps
 * are no special case.
 */
export function distanceToCubic(
  from: Point,
  c1: Point,
  c2: Point,
  to: Point,
  p: Point,
  atMost = Number.POSITIVE_INFINITY,
): number {
  const search = new Search(Math.min(atMost, distance(from, p), distance(to, p)));
  search.look([from.x - p.x, from.y - p.y, c1.x - p.x, c1.y - p.y, c2.x - p.x, c2.y - p.y, to.x - p.x, to.y - p.y], 0);
  return search.best;
}

class Search {
  best: number;

  constructor(best: number) {
    this.best = best;
  }

  look(h: Handles, depth: number): void {
    if (this.best <= GAIN || !(Math.min(...squares(h)) < (this.best - GAIN) ** 2)) return;
    if (isPoint(h)) {
      // Of a cusp: there the slope is nothing but rounding, and would be halved for ever.
      this.best = Math.min(this.best, Math.hypot(h[0], h[1]));
      return;
    }
    const turns = slopeTurns(h);
    if (turns === 0) return;
    const middle = turns === 1 ? lowest(h) : 0.5;
    const [left, right] = halves(h, middle);
    this.best = Math.min(this.best, Math.hypot(right[0], right[1]));
    if (turns === 1 || depth >= DEEPEST) return;
    this.look(left, depth + 1);
    this.look(right, depth + 1);
  }
}

/** So short that all of it is as near as its start. */
function isPoint([ax, ay, bx, by, cx, cy, dx, dy]: Handles): boolean {
  const [wide, high] = [
    Math.max(ax, bx, cx, dx) - Math.min(ax, bx, cx, dx),
    Math.max(ay, by, cy, dy) - Math.min(ay, by, cy, dy),
  ];
  return Math.max(wide, high) < GAIN;
}

/** Bernstein coefficients of the distance's square. */
export function squares([ax, ay, bx, by, cx, cy, dx, dy]: Handles): readonly number[] {
  return [
    ax * ax + ay * ay,
    ax * bx + ay * by,
    (2 * (ax * cx + ay * cy) + 3 * (bx * bx + by * by)) / 5,
    (ax * dx + ay * dy + 9 * (bx * cx + by * cy)) / 10,
    (2 * (bx * dx + by * dy) + 3 * (cx * cx + cy * cy)) / 5,
    cx * dx + cy * dy,
    dx * dx + dy * dy,
  ];
}

/** Bernstein coefficients of place · speed, which is half the slope of the distance's square (each by its own factor of 3). */
export function slope([ax, ay, bx, by, cx, cy, dx, dy]: Handles): readonly number[] {
  const [ux, uy, vx, vy, wx, wy] = [bx - ax, by - ay, cx - bx, cy - by, dx - cx, dy - cy];
  return [
    ax * ux + ay * uy,
    (2 * (ax * vx + ay * vy) + 3 * (bx * ux + by * uy)) / 5,
    (ax * wx + ay * wy + 6 * (bx * vx + by * vy) + 3 * (cx * ux + cy * uy)) / 10,
    (3 * (bx * wx + by * wy) + 6 * (cx * vx + cy * vy) + dx * ux + dy * uy) / 10,
    (3 * (cx * wx + cy * wy) + 2 * (dx * vx + dy * vy)) / 5,
    dx * wx + dy * wy,
  ];
}

/** How often the slope's coefficients change from falling to rising or back: 0 and 1 are exact, more is an upper bound. */
function slopeTurns(h: Handles): number {
  let last = 0;
  let changes = 0;
  for (const each of slope(h)) {
    const sign = Math.sign(each);
    if (sign === 0) continue;
    if (last !== 0 && sign !== last) changes++;
    last = sign;
  }
  return changes;
}

/** A parameter this near to where the curve turns is as good: there the distance hardly changes. */
const FINE = 2 ** -46;

/** Where a slope that changes its sign once does so: by false position, with the end that stays halved (Illinois). */
function lowest(h: Handles): number {
  const [a, b, c, d, e, f] = slope(h) as [number, number, number, number, number, number];
  const at = (t: number): number => {
    const u = 1 - t;
    const [uu, tt] = [u * u, t * t];
    return uu * u * (uu * a + 5 * t * (u * b + 2 * t * c)) + tt * t * (10 * uu * d + t * (5 * u * e + t * f));
  };
  let [low, high, below, above] = [0, 1, at(0), at(1)];
  // Where the slope is nothing at an end, its sign is the other than that of the other.
  above ||= -below || 1;
  below ||= -above;
  let kept = 0;
  for (let n = 0; n < 60 && high - low > FINE; n++) {
    const t = (low * above - high * below) / (above - below);
    // Where it does not close in, a half does.
    const middle = n % 8 === 7 || !(t > low && t < high) ? (low + high) / 2 : t;
    const value = at(middle);
    if (value === 0) return middle;
    if (value > 0 === above > 0) {
      [high, above] = [middle, value];
      if (kept === 1) below /= 2;
      kept = 1;
    } else {
      [low, below] = [middle, value];
      if (kept === -1) above /= 2;
      kept = -1;
    }
  }
  return (low + high) / 2;
}

/** Both parts of the curve, by de Casteljau. */
function halves(h: Handles, t: number): readonly [Handles, Handles] {
  const mix = (a: number, b: number): number => a + (b - a) * t;
  const [ax, ay, bx, by, cx, cy, dx, dy] = h;
  const [abx, aby, bcx, bcy, cdx, cdy] = [mix(ax, bx), mix(ay, by), mix(bx, cx), mix(by, cy), mix(cx, dx), mix(cy, dy)];
  const [abcx, abcy, bcdx, bcdy] = [mix(abx, bcx), mix(aby, bcy), mix(bcx, cdx), mix(bcy, cdy)];
  const [x, y] = [mix(abcx, bcdx), mix(abcy, bcdy)];
  return [
    [ax, ay, abx, aby, abcx, abcy, x, y],
    [x, y, bcdx, bcdy, cdx, cdy, dx, dy],
  ];
}
