import type { Plain } from '../../read/edit/yaml-print.ts';
import { showAmount } from '../../units/print.ts';
import type { LengthUnit } from '../../units/units.ts';
import type { Edit } from '../state/edit.ts';

/** Something of the picture that can be taken hold of: an edge, or an opening as a whole. */
export interface Handle {
  readonly id: string;
  readonly what: string;
  /** The size that it changes, by its name in the reasons. */
  readonly size: string;
  readonly axis: 'x' | 'y';
  /** Where it lies on the face, mm. */
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  /** mm, now; mm that it grows by for each that the line is moved along the axis. */
  readonly value: number;
  readonly grows: number;
  /** Its hold lies beside the line, along the axis or against it, where another line is too near. */
  readonly beside?: 1 | -1;
  readonly edits: (value: number) => readonly Edit[];
}

/** A length as the job writes it: in its own unit, a fraction where that is the truth. */
export const plain = (mm: number, unit: LengthUnit): Plain => {
  const shown = showAmount(mm, unit);
  return /^\d+(?:\.\d+)?$/u.test(shown) ? Number(shown) : shown;
};
