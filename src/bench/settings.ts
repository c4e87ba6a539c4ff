import type { Setting, Stroke } from './model.ts';

/** Readings of the guide within this of each other are one setting: nobody sets the difference (common practice, no source). */
const SAME_SETTING = 0.15;

/** The guide taken off, for strokes laid to a drawn bar line. */
export const GUIDE_OFF = -1;

type Reading = Pick<Stroke, 'guide' | 'beyondGuide'>;

/**
 * A number for every stroke's setting, from 0 in ascending order, or `GUIDE_OFF`. Settings are gathered from the
 * smallest up, so that all of one number lie within `SAME_SETTING`.
 */
export function settingNumbers(strokes: readonly Reading[]): readonly number[] {
  const readings = [...new Set(strokes.filter((s) => !s.beyondGuide).map((s) => s.guide))].sort((a, b) => a - b);
  const numbers = new Map<number, number>();
  let first = Number.NEGATIVE_INFINITY;
  let number = -1;
  for (const reading of readings) {
    if (reading - first > SAME_SETTING) {
      first = reading;
      number++;
    }
    numbers.set(reading, number);
  }
  return strokes.map((s) => (s.beyondGuide ? GUIDE_OFF : numbers.get(s.guide)!));
}

/** The same strokes, each with the reading that all of its setting are cut at: the middle of theirs. */
export function withOneReading<S extends Reading & Pick<Stroke, 'setting'>>(
  strokes: readonly S[],
  read: (guide: number) => Setting,
): readonly S[] {
  const numbers = settingNumbers(strokes);
  return strokes.map((stroke, i) => {
    if (numbers[i] === GUIDE_OFF) return stroke;
    const guides = strokes.flatMap(({ guide }, k) => (numbers[k] === numbers[i] ? [guide] : []));
    const [least, most] = [Math.min(...guides), Math.max(...guides)];
    return least === most ? stroke : { ...stroke, setting: read((least + most) / 2) };
  });
}

/** A setting that several jobs share, for a production stop. */
export interface SharedSetting {
  readonly guide: number;
  /** As the first of its strokes prints it. */
  readonly text: string;
  readonly sense: Stroke['setting']['sense'];
  readonly uses: readonly {
    /** Index of the job in the list that was given. */
    readonly job: number;
    readonly layer: number;
    readonly opening: number;
    readonly side: Stroke['side'];
  }[];
}

/**
 * Settings used by more than one of the jobs, each by its strokes, those that serve most jobs first. All jobs are taken
 * to be cut on one machine with one guide.
 */
export function sharedSettings(jobs: readonly (readonly Stroke[])[]): readonly SharedSetting[] {
  const all = jobs.flatMap((strokes, job) => strokes.map((stroke) => ({ job, stroke })));
  const numbers = settingNumbers(all.map(({ stroke }) => stroke));
  const shared = new Map<number, { job: number; stroke: Stroke }[]>();
  all.forEach((use, i) => {
    const number = numbers[i]!;
    if (number !== GUIDE_OFF) shared.set(number, [...(shared.get(number) ?? []), use]);
  });
  const jobsOf = (uses: readonly { job: number }[]): number => new Set(uses.map((use) => use.job)).size;
  return [...shared.values()]
    .filter((uses) => jobsOf(uses) > 1)
    .sort((a, b) => jobsOf(b) - jobsOf(a) || a[0]!.stroke.guide - b[0]!.stroke.guide)
    .map((uses) => ({
      guide: uses[0]!.stroke.guide,
      text: uses[0]!.stroke.setting.text,
      sense: uses[0]!.stroke.setting.sense,
      uses: uses.map(({ job, stroke }) => ({ job, layer: stroke.layer, opening: stroke.opening, side: stroke.side })),
    }));
}
