import { signal } from '@preact/signals';
import type { Source } from '../../outputs/solve-job.ts';
import type { Calibrating, Told } from '../engine/answers.ts';

/** What readings come to, and the text and the shop that it was worked out of. */
export interface Calibration {
  readonly told: Told<Calibrating>;
  readonly text: string;
  readonly shop: Source | undefined;
}

/** Of the readings that are open. */
export const calibration = signal<Calibration | undefined>(undefined);
