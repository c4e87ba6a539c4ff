import { computed, signal } from '@preact/signals';
import { showLength, showSize } from '../../units/print.ts';
import { LENGTH_UNITS, type LengthUnit } from '../../units/units.ts';
import { open, piece, said } from './piece.ts';

/** The unit in which sizes are shown, where it is not the piece's own. It changes no length. */
export const wishedUnit = signal<LengthUnit | undefined>(undefined);

export const jobUnit = computed((): LengthUnit => {
  const units = said(['units']);
  return LENGTH_UNITS.find((each) => each === units) ?? (open.value?.of === 'readings' ? 'mm' : 'in');
});
export const shownUnit = computed(
  (): LengthUnit => (open.value?.of === 'readings' ? jobUnit.value : (wishedUnit.value ?? jobUnit.value)),
);

export const shown = (mm: number): string => showLength(mm, shownUnit.value);
export const shownSize = (size: { readonly width: number; readonly height: number }): string =>
  showSize(size, shownUnit.value);

/** mm of a size by its name in the reasons, `border.left`. */
export const sizeOf = (name: string): number | undefined => piece.value?.why.find(({ size }) => size === name)?.value;

/** The size that the field with the focus speaks of; the picture lights it. */
export const lit = signal<readonly string[]>([]);
