/** What is no length: kept as it is, with all that is in it. */
const OTHERWISE: ReadonlySet<string> = new Set([
  'scale',
  'yield',
  'ratio',
  'shares',
  'share',
  'bound',
  'cost',
  'price',
  'prices',
]);

const THOUSANDS = 1000;

/** Plain data with every length to the thousandth of a millimetre, as `--json` prints it: no blade knows of more. */
export function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number.isFinite(value) ? Math.round(value * THOUSANDS) / THOUSANDS : value;
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => [key, OTHERWISE.has(key) ? each : rounded(each)]),
  );
}
