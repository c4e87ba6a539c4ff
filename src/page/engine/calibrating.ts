import { calibrate } from '../../calibrate/calibrate.ts';
import { readReadings } from '../../calibrate/readings.ts';
import { mean, standardDeviation } from '../../calibrate/statistics.ts';
import { defined } from '../../problems/defined.ts';
import type { Problem } from '../../problems/problem.ts';
import type { Asks, Calibrating, ReadingGroup, Told } from './answers.ts';

/** What readings come to, as the command of that name has it, and the shop's file with it: as it is, and with what is only offered. */
export async function calibrating({
  kind,
  text,
  file,
  shop,
  date,
}: Asks['calibrating']['request']): Promise<Told<Calibrating>> {
  const request = { kind, text, file, date, ...defined({ shop }) };
  const made = calibrate(request);
  if (!made.ok) return { ok: false, problems: made.problems };
  const { words, offer, changed, shopText } = made.value;
  const confirmed = offer === undefined ? undefined : calibrate({ ...request, confirmed: true });
  const read = readReadings(kind, { text, file });
  const value: Calibrating = {
    words,
    ...(changed ? { shopText } : {}),
    ...(offer !== undefined && confirmed?.ok === true
      ? { offer: { question: offer.question, shopText: confirmed.value.shopText } }
      : {}),
    groups: read.ok ? groupsOf(compared(read.value.readings), made.warnings) : [],
  };
  return { ok: true, value, problems: made.warnings };
}

/** What was set for differs from strip to strip: how far each came out off it can be laid beside the others. */
function compared(readings: object): object {
  const { strips } = readings as { readonly strips?: readonly object[] };
  if (strips === undefined) return readings;
  return {
    strips: strips.map((strip) => {
      const { setting, width, setback } = strip as {
        readonly setting?: number;
        readonly width?: number;
        readonly setback?: number;
      };
      return setting === undefined || width === undefined ? { setback } : { 'width less setting': width - setting };
    }),
  };
}

/** Readings of one name, from all sheets, strips or pieces, beside one another; what a warning speaks of stands out. */
function groupsOf(readings: object, warnings: readonly Problem[]): readonly ReadingGroup[] {
  const wild = warnings.map(({ path }) => path.join('.'));
  const found = new Map<string, ReadingGroup['dots'][number][]>();
  for (const { path, value } of leaves(readings, [])) {
    if (!path.some((step) => typeof step === 'number')) continue;
    const name = String(path.findLast((step) => typeof step === 'string'));
    if (name === 'thickness') continue;
    const out = wild.includes(path.join('.')) || wild.includes(path.slice(0, -1).join('.'));
    found.set(name, [...(found.get(name) ?? []), { value, out }]);
  }
  return [...found].flatMap(([name, dots]): readonly ReadingGroup[] => {
    const values = dots.map(({ value }) => value);
    const scatter = standardDeviation(values);
    return scatter === undefined ? [] : [{ name, dots, mean: mean(values), scatter }];
  });
}

type Leaf = { readonly path: readonly (string | number)[]; readonly value: number };

function leaves(value: unknown, path: Leaf['path']): readonly Leaf[] {
  if (typeof value === 'number') return [{ path, value }];
  if (typeof value !== 'object' || value === null) return [];
  const list = Array.isArray(value);
  return Object.entries(value).flatMap(([key, each]) => leaves(each, [...path, list ? Number(key) : key]));
}
