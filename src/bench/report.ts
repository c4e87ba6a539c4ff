import type { Point } from '../geometry/point.ts';
import type { Job } from '../job/job.ts';
import type { Mat } from '../mat/model.ts';
import { defined } from '../problems/defined.ts';
import type { GrooveStroke } from './grooves.ts';
import type { Setting, Stroke } from './model.ts';

/**
 * Everything solved, as plain data for `check --json`: every length a number in mm whatever the job's units, layers and
 * openings counted from 1. Sizes and grooves are in the face view; strokes in the back view, from the board's top left as
 * seen there.
 */
export function report(job: Job, mat: Mat, strokes: readonly Stroke[], grooves: readonly GrooveStroke[] = []) {
  const { head, guide } = job.bench;
  return {
    title: job.title,
    ...defined({ customer: job.customer }),
    units: job.units,
    count: job.count,
    outer: mat.outer,
    unitedInches: mat.unitedInches,
    border: mat.border,
    borderShown: mapped(mat.border, (side) => side - mat.lip),
    glazing: mat.glazing,
    backing: mat.backing,
    layers: mat.layers.map((layer, i) => ({
      layer: i + 1,
      name: layer.name,
      board: layer.board.id,
      thickness: layer.board.thickness,
      bevel: layer.bevel,
      setback: layer.setback,
      bevelFace: layer.bevelFace,
      blank: layer.blank,
      trimBack: layer.trimBack,
    })),
    openings: mat.openings.map((opening, i) => ({
      opening: i + 1,
      name: opening.name,
      sight: opening.sight,
      ...defined({ artwork: opening.artwork }),
      layers: opening.layers.map((layer, k) => ({
        layer: k + 1,
        face: layer.faceBox,
        back: layer.backBox,
        border: layer.border,
        reveal: layer.reveal,
        strip: layer.strip,
        ...defined({ hidden: layer.hidden || undefined, cut: layer.cut || undefined }),
      })),
    })),
    ...(mat.lettering === undefined
      ? {}
      : {
          lettering: mat.lettering.map(({ text, box, square, bridges, bridge, parts }) => ({
            text,
            box,
            square,
            bridges,
            bridge,
            windows: parts.length,
          })),
        }),
    bench: {
      head: head.id,
      calibrated: head.calibrated,
      overrun: head.overrun,
      stack: job.bench.stack,
      graduation: job.bench.graduation,
      guideLongest: guide.longest ?? null,
      moved: mat.moved,
    },
    ...(grooves.length === 0
      ? {}
      : {
          grooves: grooves.map((s) => ({
            opening: s.opening,
            line: s.number,
            pass: s.pass,
            side: s.side,
            order: s.order,
            start: xy(s.start),
            stop: xy(s.stop),
            edge: { from: xy(s.line.from), to: xy(s.line.to) },
            middle: { from: xy(s.face.from), to: xy(s.face.to) },
            depth: s.depth,
            ...guided(s),
          })),
        }),
    ...defined({ asCut: mat.changed === undefined ? undefined : { changed: mat.changed } }),
    strokes: strokes.map((s) => ({
      layer: s.layer,
      opening: s.opening,
      side: s.side,
      ...defined({ part: s.part }),
      order: s.order,
      start: xy(s.start),
      stop: xy(s.stop),
      line: { from: xy(s.line.from), to: xy(s.line.to) },
      face: { from: xy(s.face.from), to: xy(s.face.to) },
      ...guided(s),
      ...defined({ bar: s.bar === undefined ? undefined : { from: xy(s.bar.from), to: xy(s.bar.to) } }),
      ...defined({
        uncut: s.uncut,
        cut: s.cut || undefined,
        changed: s.planned && true,
        planned: s.planned && settingRecord(s.planned),
      }),
    })),
  };
}

export type Report = ReturnType<typeof report>;

const xy = (p: Point): Point => ({ x: p.x, y: p.y });

function mapped<K extends string>(
  sides: Readonly<Record<K, number>>,
  f: (length: number) => number,
): Record<K, number> {
  return Object.fromEntries(Object.entries<number>(sides).map(([side, length]) => [side, f(length)])) as Record<
    K,
    number
  >;
}

const settingRecord = ({ value, text, sense, remainder }: Setting) => ({ value, text, sense, remainder });

/** How the guide stands for a stroke. */
const guided = ({ guide, guideFrom, distance, setting, beyondGuide }: Stroke) => ({
  guide,
  guideFrom,
  distance,
  setting: settingRecord(setting),
  beyondGuide,
});
