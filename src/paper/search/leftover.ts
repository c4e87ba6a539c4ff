/** Branches tried before the smallest cover found so far is taken; real patterns need none. */
const MOST_BRANCHES = 4000;
/** With more strips than this the answer is a good one, not a proven one; a pattern leaves a handful. */
const MOST_STRIPS = 48;

/**
 * The fewest of some numbered sheets so that every strip is shown: each strip names the sheets that could show it.
 * Exact up to bounds on the work; undefined where more than `most` would be needed.
 */
export function fewestFor(strips: readonly (readonly number[])[], most: number): readonly number[] | undefined {
  if (apart(strips) > most) return undefined;
  if (strips.length > MOST_STRIPS) {
    const some = greedily(strips);
    return some.length > most ? undefined : some;
  }
  let best: readonly number[] | undefined;
  let room = most;
  let branches = 0;

  const visit = (left: readonly (readonly number[])[], chosen: readonly number[]): void => {
    if (chosen.length + (left.length > 0 ? 1 : 0) > room) return;
    const { strips: open, taken } = simplified(left);
    const now = [...chosen, ...taken];
    if (open.length === 0) {
      if (now.length <= room) {
        best = now;
        room = now.length - 1;
      }
      return;
    }
    const strip = open.reduce((a, b) => (b.length < a.length ? b : a));
    for (const sheet of strip) {
      if (now.length + 1 > room || ++branches > MOST_BRANCHES) return;
      visit(
        open.filter((other) => !other.includes(sheet)),
        [...now, sheet],
      );
    }
  };
  visit(strips, []);
  return best;
}

/** Takes every sheet that has no rival, and drops the sheets that show nothing another would not. */
function simplified(strips: readonly (readonly number[])[]): {
  readonly strips: readonly (readonly number[])[];
  readonly taken: readonly number[];
} {
  const taken: number[] = [];
  let left = strips;
  for (;;) {
    const alone = left.find((strip) => strip.length === 1);
    if (alone !== undefined) {
      const sheet = alone[0]!;
      taken.push(sheet);
      left = left.filter((strip) => !strip.includes(sheet));
      continue;
    }
    const idle = idleSheet(left);
    if (idle === undefined) return { strips: left, taken };
    left = left.map((strip) => strip.filter((sheet) => sheet !== idle));
  }
}

/** A sheet whose strips all belong to one other sheet too. */
function idleSheet(strips: readonly (readonly number[])[]): number | undefined {
  const shows = new Map<number, number[]>();
  strips.forEach((strip, i) => {
    for (const sheet of strip) shows.set(sheet, [...(shows.get(sheet) ?? []), i]);
  });
  for (const [sheet, own] of shows) {
    const rivals = strips[own[0]!]!;
    if (rivals.some((other) => other !== sheet && own.every((i) => strips[i]!.includes(other)))) return sheet;
  }
  return undefined;
}

/** How many strips, taken as they come, have no sheet in common: each needs one of its own. */
function apart(strips: readonly (readonly number[])[]): number {
  const taken = new Set<number>();
  let count = 0;
  for (const strip of strips) {
    if (strip.some((sheet) => taken.has(sheet))) continue;
    for (const sheet of strip) taken.add(sheet);
    count++;
  }
  return count;
}

/** For each strip that is not shown yet, the sheet that shows most others. */
function greedily(strips: readonly (readonly number[])[]): readonly number[] {
  const shows = new Map<number, number>();
  for (const strip of strips) for (const sheet of strip) shows.set(sheet, (shows.get(sheet) ?? 0) + 1);
  const taken = new Set<number>();
  for (const strip of strips) {
    if (strip.some((sheet) => taken.has(sheet))) continue;
    taken.add(strip.reduce((a, b) => (shows.get(b)! > shows.get(a)! ? b : a)));
  }
  return [...taken];
}
