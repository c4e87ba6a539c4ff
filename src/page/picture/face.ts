import { type ComponentChild, h } from 'preact';
import type { Piece } from '../engine/answers.ts';
import { Grips } from './grips.ts';
import { type PictureUrls, seenElements } from './items.ts';
import { Edges, measuring } from './measure.ts';
import { Sizes } from './sizes.ts';

export interface FaceOf {
  readonly piece: Piece;
  readonly zoom: number;
  readonly sizes: boolean;
  readonly pictures: PictureUrls;
}

/** The face of the mat, to scale: what is on it, the sizes beside its edges, what can be taken hold of. */
export function Face({ piece, zoom, sizes, pictures }: FaceOf): ComponentChild {
  const { face, report } = piece;
  if (face === undefined) return null;
  const { width, height } = report.outer;
  const long = Math.max(width, height);
  const letter = Math.min(long / 34, Math.min(width, height) / 14);
  const room = { near: long * 0.03, far: letter * 3.4 };
  const box = [-room.near, -room.near, width + room.near + room.far, height + room.near + room.far];
  return h(
    'svg',
    {
      class: 'face',
      viewBox: box.map((each) => Math.round(each * 1000) / 1000).join(' '),
      width: `${zoom * 100}%`,
      height: `${zoom * 100}%`,
      role: 'group',
      'aria-label': `Face of ${face.title}`,
    },
    [
      h('g', { key: 'drawn', 'aria-hidden': 'true' }, [
        h(Shade, { key: 'shade', width, height }),
        ...seenElements(face, pictures),
      ]),
      sizes ? h(Sizes, { key: 'sizes', piece, letter }) : null,
      measuring.value
        ? h(Edges, { key: 'edges', piece, thick: long / 45 })
        : h(Grips, { key: 'grips', piece, thick: long / 30 }),
    ],
  );
}

/** What the mat throws on the wall. */
export function Shade({ width, height }: { readonly width: number; readonly height: number }): ComponentChild {
  const far = Math.max(width, height) * 0.006;
  return h(
    'g',
    {},
    [1, 2, 3].map((each) =>
      h('rect', {
        key: each,
        class: 'shade',
        x: -far * 0.3 * each,
        y: far * 0.4 * each,
        width: width + far * 0.6 * each,
        height: height + far * 0.6 * each,
        rx: far,
      }),
    ),
  );
}
