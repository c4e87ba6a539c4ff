/** Edit distance in insertions, deletions, substitutions and swaps of neighbours. */
function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, rows[i - 2]![j - 2]! + 1);
      row.push(best);
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}

/** The known word nearest to `word`, or undefined where none is near enough to be meant. Case is ignored. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  const given = word.slice(0, 64).toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(given.length / 3)) + 1;
  for (const candidate of known) {
    const d = distance(given, candidate.toLowerCase());
    if (d < bestDistance) [best, bestDistance] = [candidate, d];
  }
  return best;
}
