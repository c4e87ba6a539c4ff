import type { Drawing, Group } from '../../drawing/model.ts';
import { cropOf } from './crop.ts';
import { DIMENSION_PENS } from './dimensions.ts';
import { PROOF_GROUPS, type Proof, type ProofOptions, type Variant, type WantedPicture } from './model.ts';
import { PART_PENS } from './parts.ts';
import { type PlacedPicture, piecePens } from './piece.ts';
import { bestSheet } from './sheet.ts';

/** On paper whose longer side is less there is room for two side by side, else for four. */
const LARGE_PAPER = 400;

/**
 * The customer's proof: the piece to scale from the face, its sizes, what it is made of, a line to sign. Variants stand
 * side by side, as many on a sheet as are still well seen; at least one.
 */
export function proof(variants: readonly Variant[], options: ProofOptions): Proof {
  const wanted: WantedPicture[] = [];
  const most = Math.max(options.paper.width, options.paper.height) < LARGE_PAPER ? 2 : 4;
  const perSheet = Math.min(most, variants.length);
  const { paper, scale, make } = bestSheet(variants, options, perSheet);
  const { title } = variants[0]!.job;

  const picture = (variant: Variant, opening: number): PlacedPicture | undefined => {
    const crop = cropOf(variant.mat.openings[opening]!, options.pictures[opening]);
    if (crop === undefined) return undefined;
    const size = { width: crop.box.width * scale, height: crop.box.height * scale };
    const isSame = (each: WantedPicture) =>
      each.opening === opening && near(each.crop, crop.pixels) && near(each.size, size);
    const same = wanted.find(isSame);
    const id = same?.id ?? `picture-${wanted.length + 1}`;
    if (same === undefined) wanted.push({ id, opening, crop: crop.pixels, size, cut: crop.cut });
    return { id, box: crop.box };
  };

  const sheets = Array.from({ length: Math.ceil(variants.length / perSheet) }, (_, i): Drawing => {
    const own = variants.slice(i * perSheet, (i + 1) * perSheet);
    const items = make(own, { first: i * perSheet, picture });
    return {
      title: `${title}, proof`,
      width: paper.width,
      height: paper.height,
      view: 'sheet',
      pens: Object.assign({}, PART_PENS, DIMENSION_PENS, ...own.map(({ job }) => piecePens(job, scale))),
      groups: PROOF_GROUPS.flatMap(([name, label]): Group[] => {
        const found = items.get(name) ?? [];
        return found.length === 0 ? [] : [{ name, label, shown: true, items: found }];
      }),
    };
  });
  return { title: `${title}, proof`, sheets, scale, pictures: wanted };
}

function near<T extends object>(a: T, b: T): boolean {
  const [first, second] = [Object.values(a), Object.values(b)] as [number[], number[]];
  return first.every((value, i) => Math.abs(value - second[i]!) < 1e-6);
}
