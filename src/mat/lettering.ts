import type { Fonts } from '../fonts/model.ts';
import { type Box, box, contains, grown, union } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { boxesApart, gapBetween, isInside, outlineOf } from '../geometry/near.ts';
import { parallelOf } from '../geometry/parallel.ts';
import { type Path, placedPath } from '../geometry/path.ts';
import type { Size } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { LetteringRequest } from '../job/lettering.ts';
import { error, type Problem } from '../problems/problem.ts';
import { letterWindows } from '../shapes/letter-windows.ts';
import { showLength } from '../units/print.ts';
import { mmFromInches } from '../units/units.ts';
import { backInset } from './bevel.ts';
import { belowUnknown } from './checks/group.ts';
import { theLayer } from './layers.ts';
import type { MatLayer, MatLettering, MatOpening } from './model.ts';
import { AGREEMENT } from './reasons/contradiction.ts';

interface Lettered {
  readonly made: readonly MatLettering[];
  readonly problems: readonly Problem[];
}

/** Every text of the job in its place, or why it cannot be cut there. It never changes what else the mat is. */
export function lettered(
  job: Job,
  outer: Size,
  layers: readonly MatLayer[],
  openings: readonly MatOpening[],
  fonts: Fonts | undefined,
): Lettered {
  const requests = job.lettering ?? [];
  if (fonts?.outlines === undefined) return { made: [], problems: requests.map(withoutFonts) };
  const problems: Problem[] = [];
  const made = requests.flatMap((request, index): MatLettering[] => {
    const found = oneText(job, index, request, outer, openings, fonts);
    if (!('text' in found)) {
      problems.push(found);
      return [];
    }
    problems.push(...placeProblems(job, index, found, outer, layers, openings));
    return [found];
  });
  return { made, problems: [...problems, ...pairProblems(job, made)] };
}

const at = (index: number, ...more: readonly string[]): Problem['path'] => ['lettering', index, ...more];
const called = ({ text }: { readonly text: string }): string => `the lettering ${text}`;

function withoutFonts(request: LetteringRequest, index: number): Problem {
  const message = `${called(request)} is cut from the outlines of its letters, which have not been loaded`;
  return error(NEEDS_FONTS, at(index, 'text'), message, 'load fonts with outlines, and solve the job with them');
}

export const NEEDS_FONTS = 'lettering-needs-fonts';

function oneText(
  job: Job,
  index: number,
  request: LetteringRequest,
  outer: Size,
  openings: readonly MatOpening[],
  fonts: Fonts,
): MatLettering | Problem {
  const { text, weight, height, spacing, bridge, islands, edge } = request;
  const bridged = islands === 'bridge' ? { bridge } : {};
  const windows = letterWindows(text, { weight, height, spacing, ...bridged }, fonts);
  if (!windows.ok) {
    return error('lettering-unfit', at(index, 'text'), `${called(request)}: ${windows.message}`, windows.hint);
  }
  const own = union(windows.parts.map(({ path }) => pathBox(path)));
  const corner = cornerOf(request, own, outer, openings);
  if (corner === undefined) return belowUnknown(job, at(index, 'place', 'below'), request.place.below!.opening);
  const { board, bevel } = job.mat.layers[0]!;
  const inset = edge === 'square' ? 0 : backInset(board.thickness, bevel);
  const parts: { letter: string; face: Path; back: Path }[] = [];
  for (const { letter, path } of windows.parts) {
    const face = placedPath(path, (p) => ({ x: p.x - own.x + corner.x, y: p.y - own.y + corner.y }));
    const back = parallelOf(face, -inset);
    if (back === 'nothing' || back === 'parts') {
      const message = `${called(request)}: ${letter} is so narrow somewhere that its bevels meet`;
      return error('lettering-unfit', at(index, 'edge'), message, 'write edge: square, or make the letters larger');
    }
    parts.push({ letter, face, back });
  }
  return {
    text,
    box: box(corner.x, corner.y, own.width, own.height),
    square: inset === 0,
    bridges: windows.bridges,
    bridge,
    parts,
  };
}

/** Upper left corner of the box round all letters; undefined where it lies below an opening that there is none of. */
function cornerOf(request: LetteringRequest, own: Size, outer: Size, openings: readonly MatOpening[]) {
  const { left, right, top, bottom, below } = request.place;
  const middle = { x: (outer.width - own.width) / 2, y: (outer.height - own.height) / 2 };
  if (below !== undefined) {
    const over = openings.find(({ name }) => name === below.opening)?.layers[0]?.faceBox;
    if (over === undefined) return undefined;
    return { x: over.x + (over.width - own.width) / 2, y: over.y + over.height + below.gap };
  }
  return {
    x: left ?? (right === undefined ? middle.x : outer.width - right - own.width),
    y: top ?? (bottom === undefined ? middle.y : outer.height - bottom - own.height),
  };
}

/** The edge that reaches farther out: the back of a reversed bevel, else the face. */
const outermost = (each: { readonly face: Path; readonly back: Path }, reverse: boolean): Path =>
  reverse ? each.back : each.face;

function apart(a: Path, b: Path): number {
  if (isInside(outlineOf(a), b.start) || isInside(outlineOf(b), a.start)) return 0;
  return gapBetween(a, b);
}

/** Between letters and openings: 1/4 in or 6 mm (common practice, no source). */
const usualBar = (job: Job): number => (job.units === 'in' ? mmFromInches(1 / 4) : 6);
/** What falls short of it by less than lengths agree is no narrower: a bar of 1/4 in as worked from outlines comes out some micrometres off. */
const least = (job: Job): number => job.mat.leastBar ?? usualBar(job);

/** Off the part of the mat that is seen, off an under mat that should show, or too near to an opening in any layer. */
function placeProblems(
  job: Job,
  index: number,
  made: MatLettering,
  outer: Size,
  layers: readonly MatLayer[],
  openings: readonly MatOpening[],
): readonly Problem[] {
  const show = (mm: number): string => showLength(mm, job.units);
  const seen = grown(box(0, 0, outer.width, outer.height), -(job.mat.frame?.lip ?? 0));
  const hint = 'move it, or make the letters smaller';
  if (!contains(seen, made.box)) {
    const message = `${called(made)}, ${show(made.box.width)} wide, runs off the part of the mat that is seen`;
    return [error('lettering-off-mat', at(index), message, hint)];
  }
  const problems: Problem[] = [];
  for (const [layer, { blankBox }] of layers.entries()) {
    if (layer > 0 && !contains(blankBox, made.box)) {
      const message = `${called(made)} reaches beyond the edge of ${theLayer(layer)}, which should show in it`;
      problems.push(error('lettering-off-mat', at(index), message, 'move it in, or make the trim-back smaller'));
    }
  }
  const need = least(job);
  for (const opening of openings) {
    for (const [layer, { bevel }] of layers.entries()) {
      const own = opening.layers[layer]!;
      const edge = outermost(own, bevel.reverse);
      if (boxesApart(made.box, bevel.reverse ? own.backBox : own.faceBox) >= need - AGREEMENT) continue;
      const gap = Math.min(
        ...made.parts.map((part) => apart(layer === 0 ? outermost(part, bevel.reverse) : part.face, edge)),
      );
      if (gap >= need - AGREEMENT) continue;
      const message = `${called(made)} comes within ${show(gap)} of ${opening.name} in ${theLayer(layer)}, ${show(need)} is the least`;
      problems.push(error('lettering-near', at(index), message, `${hint}, or set mat.leastBar`));
      break;
    }
  }
  return [...problems, ...letterProblems(job, index, made)];
}

/** Letters, and parts of one letter, that leave less board between them than a bridge is wide. */
function letterProblems(job: Job, index: number, { text, parts, bridge }: MatLettering): readonly Problem[] {
  const { reverse } = job.mat.layers[0]!.bevel;
  const edges = parts.map((part) => ({ letter: part.letter, path: outermost(part, reverse) }));
  const boxes: Box[] = edges.map(({ path }) => pathBox(path));
  for (const [i, a] of edges.entries()) {
    for (const [k, b] of edges.entries()) {
      if (k <= i || boxesApart(boxes[i]!, boxes[k]!) >= bridge - AGREEMENT) continue;
      const gap = apart(a.path, b.path);
      if (gap >= bridge - AGREEMENT) continue;
      const [near, need] = [gap, bridge].map((mm) => showLength(mm, job.units));
      const what = a.letter === b.letter ? `parts of ${a.letter}` : `${a.letter} and ${b.letter}`;
      const message = `in the lettering ${text} ${what} come within ${near} of each other, ${need} is the least`;
      const own = a.letter === b.letter;
      const hint = own
        ? 'set a narrower bridge, or larger letters'
        : 'set more spacing, a narrower bridge, or larger letters';
      return [error('letters-near', at(index, 'spacing'), message, hint)];
    }
  }
  return [];
}

/** Two texts that lie over one another or too near. */
function pairProblems(job: Job, made: readonly MatLettering[]): readonly Problem[] {
  const need = least(job);
  return made.flatMap((a, i) =>
    made.slice(i + 1).flatMap((b, k): Problem[] => {
      const gap = boxesApart(a.box, b.box);
      if (gap >= need - AGREEMENT) return [];
      const [near, show] = [gap, need].map((mm) => showLength(mm, job.units));
      const message = `${called(a)} and ${called(b)} come within ${near} of each other, ${show} is the least`;
      return [error('lettering-near', at(i + 1 + k), message, 'move them apart')];
    }),
  );
}
