import { signal } from '@preact/signals';
import type { Calibrating, Told } from '../engine/answers.ts';

/** What the readings that are open come to. */
export const calibration = signal<Told<Calibrating> | undefined>(undefined);
