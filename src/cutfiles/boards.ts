import { mirror } from '../bench/outline.ts';
import { type Path, polygon } from '../geometry/path.ts';
import type { Point, Size } from '../geometry/point.ts';
import type { Mat } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import type { Machine } from '../shop/machine.ts';
import type { LaidBoard, LaidOpening } from './model.ts';
import { laid } from './toolpaths/clockwise.ts';

/** The blank of a layer as it hangs. */
export const blankSize = (mat: Mat, layer: number): Size => mat.layers[layer - 1]!.blank;

export const turnedSize = (size: Size, turned: boolean): Size =>
  turned ? { width: size.height, height: size.width } : size;

/** A layer's blank with its openings, laid with its top left corner at `at`, the machine's side of it up. */
export function laidBoard(mat: Mat, layer: number, up: Machine['up'], at: Point, turned: boolean): LaidBoard {
  const { name, board, blank, blankBox } = mat.layers[layer - 1]!;
  const place = (p: Point): Point =>
    turned ? { x: at.x + blank.height - p.y, y: at.y + p.x } : { x: at.x + p.x, y: at.y + p.y };
  // An under mat's own corner: its blank is smaller than the mat.
  const own = (p: Point): Point => place({ x: p.x - blankBox.x, y: p.y - blankBox.y });
  const seen = (path: Parameters<typeof mirror>[0]) => laid(up === 'back' ? mirror(path, mat.outer.width) : path, own);
  const { width, height } = blank;
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return {
    layer,
    name,
    board,
    size: turnedSize(blank, turned),
    at,
    turned,
    outline: laid(polygon(corners), place),
    openings: [
      ...mat.openings.flatMap((opening, i): LaidOpening[] => {
        const { face, back, cut } = opening.layers[layer - 1]!;
        // What the job says is cut already is not cut again.
        return cut === true
          ? []
          : [{ id: `opening-${i + 1}`, path: ['openings', i], name: opening.name, face: seen(face), back: seen(back) }];
      }),
      ...(layer === 1 ? letterWindows(mat, seen) : []),
    ],
    place,
  };
}

function letterWindows(mat: Mat, seen: (path: Path) => Path): readonly LaidOpening[] {
  return (mat.lettering ?? []).flatMap(({ text, square, parts }, i) =>
    parts.map(({ face, back }, k) => ({
      id: `lettering-${i + 1}-${k + 1}`,
      path: ['lettering', i],
      name: text,
      face: seen(face),
      back: seen(back),
      ...defined({ upright: square ? (true as const) : undefined }),
    })),
  );
}
