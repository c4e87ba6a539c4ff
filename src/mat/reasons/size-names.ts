import { SIDES } from '../../geometry/sides.ts';
import { layerName } from '../layers.ts';
import { openingName } from '../names.ts';
import type { Plan } from '../sizes/structure.ts';
import { AXES, border, gap, opening, outer, overlap, place, reveal, revealed } from '../sizes/unknowns.ts';
import type { Snapped } from '../snap/snap.ts';

/** A size of a solved mat as data and messages call it, and the unknown that it is. */
export interface NamedSize {
  readonly size: string;
  readonly what: string;
  readonly unknown: string;
  /** −1 where the unknown counts the other way: a float is an overlap of less than nothing. */
  readonly sign: 1 | -1;
  /** Of one opening. */
  readonly opening?: number;
  /** As the mat has it in the end, where that is known. */
  readonly value?: number;
}

const GAPS = { width: 'gap between neighbours', height: 'gap between rows' } as const;

/** Every size that is solved for, each opening's by itself. */
export function nameSizes({ job, group, spans }: Plan, { sizes, moved }: Snapped): readonly NamedSize[] {
  const of = (index: number): string => (job.openings.length === 1 ? '' : ` of ${openingName(job, index)}`);
  const around = group.arranged.flat().map((index) => sizes.openings[index]!.border);
  const gapNow = (what: string): { readonly value?: number } => {
    const value = moved.find((each) => each.what === what)?.to;
    return value === undefined ? {} : { value };
  };
  return [
    ...AXES.map((axis): NamedSize => {
      const { extent } = axis;
      const value = sizes.outer[extent];
      return { size: `outer.${extent}`, what: `outer ${extent}`, unknown: outer(axis), sign: 1, value };
    }),
    ...SIDES.flatMap((side): NamedSize[] => {
      if (around.length === 0) return [];
      const value = Math.min(...around.map((each) => each[side]));
      return [{ size: `border.${side}`, what: `${side} border`, unknown: border(side), sign: 1, value }];
    }),
    ...revealed(job).map((layer): NamedSize => {
      const unknown = reveal(layer);
      return { size: `reveals[${layer}]`, what: `reveal of ${layerName(layer)}`, unknown, sign: 1 };
    }),
    ...AXES.flatMap((axis): NamedSize[] => {
      const what = GAPS[axis.extent];
      if (spans[axis.extent].length < 2) return [];
      return [{ size: `gap.${axis.extent}`, what, unknown: gap(axis), sign: 1, ...gapNow(what) }];
    }),
    ...job.openings.flatMap((request, index): NamedSize[] => {
      const kind = group.alikes[index]!;
      const at = `openings[${index}]`;
      const now = sizes.openings[index]!;
      const faces = AXES.map((axis): NamedSize => {
        const { extent } = axis;
        const names = { size: `${at}.opening.${extent}`, what: `opening ${extent}${of(index)}` };
        return { ...names, unknown: opening(axis, kind), sign: 1, value: now.opening[extent] };
      });
      const key = request.float === undefined ? 'overlap' : 'float';
      const sign = request.float === undefined ? 1 : -1;
      const covers = SIDES.flatMap((side): NamedSize[] => {
        if (request.artwork === undefined) return [];
        const names = { size: `${at}.${key}.${side}`, what: `${key} at the ${side}${of(index)}` };
        const value = now.overlap === undefined ? {} : { value: sign * now.overlap[side] };
        return [{ ...names, unknown: overlap(side, kind), sign, ...value }];
      });
      const places = SIDES.flatMap((side): NamedSize[] => {
        if (!group.placed.includes(index)) return [];
        const names = { size: `${at}.place.${side}`, what: `${side}${of(index)}` };
        return [{ ...names, unknown: place(side, index), sign: 1, value: now.border[side] }];
      });
      return [...faces, ...covers, ...places].map((each) => ({ ...each, opening: index }));
    }),
  ];
}
