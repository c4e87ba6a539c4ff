/**
 * The fewest equal sheets by trying every first cut at every whole position, again and again: slow, and without any of
 * the planner's ideas. Sizes are whole numbers.
 */
export interface Blank {
  readonly width: number;
  readonly height: number;
}

interface Asked {
  readonly width: number;
  readonly height: number;
  readonly kerf: number;
  readonly turn: boolean;
}

export function fewestSheets(blanks: readonly Blank[], asked: Asked): number {
  const known = new Map<string, boolean>();
  const fits = (set: number, width: number, height: number): boolean => {
    if (set === 0) return true;
    if (width <= 0 || height <= 0) return false;
    const key = `${set} ${width} ${height}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, false);
    const answer = isOne(set, width, height) || firstCut(set, width, height);
    known.set(key, answer);
    return answer;
  };
  /** A single blank that is as large as what it is cut from. */
  const isOne = (set: number, width: number, height: number): boolean =>
    blanks.some((blank, i) => {
      if (set !== 1 << i) return false;
      const upright = blank.width === width && blank.height === height;
      return upright || (asked.turn && blank.height === width && blank.width === height);
    });
  /** The part before the cut may be waste, and so may that behind it, even one that the kerf eats up. */
  const firstCut = (set: number, width: number, height: number): boolean => {
    for (let part = set; ; part = (part - 1) & set) {
      for (let at = 1; at < width; at++) {
        if (fits(part, at, height) && fits(set & ~part, width - at - asked.kerf, height)) return true;
      }
      for (let at = 1; at < height; at++) {
        if (fits(part, width, at) && fits(set & ~part, width, height - at - asked.kerf)) return true;
      }
      if (part === 0) return false;
    }
  };
  const all = (1 << blanks.length) - 1;
  const need = new Map<number, number>([[0, 0]]);
  const sheets = (set: number): number => {
    const before = need.get(set);
    if (before !== undefined) return before;
    const first = set & -set;
    let best = Infinity;
    for (let part = set; part > 0; part = (part - 1) & set) {
      if ((part & first) === 0 || !fits(part, asked.width, asked.height)) continue;
      best = Math.min(best, 1 + sheets(set & ~part));
    }
    need.set(set, best);
    return best;
  };
  return sheets(all);
}
