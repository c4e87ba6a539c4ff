import type { ReadJob } from './job/read.ts';
import type { Reason } from './mat/reasons/reason.ts';
import { reasons as reasonsOf } from './mat/reasons/reasons.ts';
import { showReason } from './mat/reasons/show-reason.ts';

/** A reason as it is told: its paths stand in the job's text, and its sum is written out. */
export interface Why extends Reason {
  /** `16 in − 2 × 2 3/4 in`, in the job's units. */
  readonly sum: string;
}

/** Why every size of a solved job is what it is: given, or derived, and from what. Nothing is worked out until it is asked for. */
export function reasons({ job, written }: Pick<ReadJob, 'job' | 'written'>): readonly Why[] {
  return reasonsOf(job).map((reason): Why => {
    const from = reason.from.map((part) => (part.path === undefined ? part : { ...part, path: written(part.path) }));
    const rules = reason.rules.map((rule) => (rule.path === undefined ? rule : { ...rule, path: written(rule.path) }));
    const given = reason.given === undefined ? {} : { given: written(reason.given) };
    return { ...reason, ...given, from, rules, sum: showReason(reason, job.units) };
  });
}
