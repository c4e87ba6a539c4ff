import { type Box, box } from '../geometry/box.ts';
import type { Side } from '../geometry/sides.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';

/** The tab of a T-hinge and the strip that crosses it, mm. Common practice, no source. */
export const TAB = { width: 25, height: 32 } as const;
export const STRIP = { width: 50, height: 14 } as const;
/** How much of the tab lies on the artwork. Common practice, no source. */
export const ON_ART = 6;

const [NEAREST, FARTHEST] = [30, 110];

/** From an upper corner to the middle of its hinge: a sixth of the width, as far as a hand-sized card goes. Common practice, no source. */
export const hingeFromCorner = (width: number): number => Math.min(FARTHEST, Math.max(NEAREST, Math.round(width / 6)));

/** A work wider than this gets a hinge in its middle too. Common practice, no source. */
const WIDE = 500;

/**
 * The middles of the hinges along the upper edge, from its left end: two or more (Library of Congress; M. T. Jackson,
 * The Museum, 1917), nearer each other on a work too narrow for the usual distance.
 */
function hingePlaces(width: number): readonly number[] {
  const from = Math.min(hingeFromCorner(width), width / 4);
  return width > WIDE ? [from, width / 2, width - from] : [from, width - from];
}

export interface HingeBoxes {
  /** Behind the artwork. */
  readonly behind: readonly Box[];
  /** On the backing, above the artwork. */
  readonly above: readonly Box[];
}

/**
 * T-hinges: a tab that reaches up from behind the artwork, and a strip across it, which the mat hides. V-hinges for a
 * float: folded, and all behind the artwork (NEDCC Preservation Leaflet 7.4).
 */
export function hingeBoxes(artwork: Box, floated: boolean): HingeBoxes {
  const wide = Math.min(1, artwork.width / (2.5 * STRIP.width));
  const boxes = hingePlaces(artwork.width).map((place): HingeBoxes => {
    const x = artwork.x + place;
    const tab = (y: number, height: number): Box => box(x - (wide * TAB.width) / 2, y, wide * TAB.width, height);
    if (floated) return { behind: [tab(artwork.y + 3, Math.min(TAB.height / 2, artwork.height / 3))], above: [] };
    const up = Math.min(TAB.height - ON_ART, Math.max(4, artwork.y - 6));
    const strip = Math.min(STRIP.height, up * 0.6);
    const across = box(x - (wide * STRIP.width) / 2, artwork.y - up, wide * STRIP.width, strip);
    return { behind: [tab(artwork.y, ON_ART)], above: [tab(artwork.y - up + strip, up - strip), across] };
  });
  return { behind: boxes.flatMap(({ behind }) => behind), above: boxes.flatMap(({ above }) => above) };
}

/** Along which edge window and backing hinge: as asked, else the longer one, left or top (check: LOC, JAC). */
export function hingeSide(job: Job, mat: Mat): Side {
  return job.bench.hinge ?? (mat.outer.height >= mat.outer.width ? 'left' : 'top');
}
