import type { Job } from '../job/job.ts';

/** What messages and documents call an opening. */
export const openingName = (job: Job, index: number): string => job.openings[index]?.name ?? `opening ${index + 1}`;
