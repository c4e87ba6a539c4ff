import { type Box, box, grown } from '../../src/geometry/box.ts';
import { polygon } from '../../src/geometry/path.ts';
import type { BySide } from '../../src/geometry/sides.ts';
import type { Job } from '../../src/job/job.ts';
import type { Bevel } from '../../src/job/layer.ts';
import type { Mat, MatLayer, OpeningLayer } from '../../src/mat/model.ts';
import type { Board } from '../../src/shop/board.ts';
import type { Head } from '../../src/shop/head.ts';

/** Mats and jobs put together by hand, so that the bench is tested without the solver. */

const side4 = (value: number): BySide<number> => ({ top: value, right: value, bottom: value, left: value });

function board(thickness: number): Board {
  return {
    id: `board-${thickness}`,
    name: `board-${thickness}`,
    thickness,
    colour: '#efe9dc',
    core: '#ffffff',
    sheets: [],
    directional: false,
  };
}

const rectanglePath = (b: Box) =>
  polygon([
    { x: b.x, y: b.y },
    { x: b.x + b.width, y: b.y },
    { x: b.x + b.width, y: b.y + b.height },
    { x: b.x, y: b.y + b.height },
  ]);

export interface LayerIn {
  readonly thickness: number;
  readonly bevel: Bevel;
  /** One face opening for each opening of the mat. */
  readonly faces: readonly Box[];
  readonly reveal?: number;
  readonly trimBack?: number;
}

export const bevel = (angle = 45, reverse = false): Bevel => ({ angle, reverse });

const cot = (angle: number): number =>
  angle === 90 ? 0 : Math.cos((angle * Math.PI) / 180) / Math.sin((angle * Math.PI) / 180);

export function makeMat(width: number, height: number, layers: readonly LayerIn[]): Mat {
  const borderOf = (b: Box): BySide<number> => ({
    top: b.y,
    left: b.x,
    right: width - b.x - b.width,
    bottom: height - b.y - b.height,
  });
  const matLayers = layers.map((layer, i): MatLayer => {
    const trim = layer.trimBack ?? 0;
    return {
      name: i === 0 ? 'top mat' : `under mat ${i}`,
      board: board(layer.thickness),
      bevel: layer.bevel,
      setback: layer.thickness * cot(layer.bevel.angle),
      bevelFace: layer.thickness / Math.sin((layer.bevel.angle * Math.PI) / 180),
      blank: { width: width - 2 * trim, height: height - 2 * trim },
      trimBack: trim,
      blankBox: box(trim, trim, width - 2 * trim, height - 2 * trim),
    };
  });
  const openings = layers[0]!.faces.map((_, k) => ({
    name: `opening ${k + 1}`,
    shape: 'rectangle' as const,
    sight: layers.at(-1)!.faces[k]!,
    layers: layers.map((layer, i): OpeningLayer => {
      const face = layer.faces[k]!;
      const setback = matLayers[i]!.setback;
      const back = grown(face, layer.bevel.reverse ? setback : -setback);
      return {
        face: rectanglePath(face),
        back: rectanglePath(back),
        faceBox: face,
        backBox: back,
        border: borderOf(face),
        reveal: side4(layer.reveal ?? 0),
        strip: side4(1),
      };
    }),
  }));
  return {
    outer: { width, height },
    unitedInches: width + height,
    glazing: { width, height },
    backing: { width, height },
    lip: 0,
    border: borderOf(layers[0]!.faces[0]!),
    layers: matLayers,
    openings,
    moved: [],
  };
}

const plainHead: Head = {
  id: 'plain',
  bevel: 45,
  opening: 'left',
  straightedge: 0,
  straightedgeOn: 'border',
  pin: false,
  strokesPerBlade: 64,
  start: [],
  stop: [],
  overrun: 0,
  calibrated: false,
};

export interface BenchIn {
  readonly head?: Partial<Head>;
  readonly guide?: Partial<Job['bench']['guide']>;
  readonly graduation?: number;
  readonly units?: Job['units'];
  readonly stack?: 'together' | 'apart';
  readonly print?: Partial<Job['print']>;
}

export function makeJob(mat: Mat, bench: BenchIn = {}): Job {
  return {
    title: 'Tern, linocut',
    units: bench.units ?? 'mm',
    mat: {
      border: {},
      layers: mat.layers.map((layer) => ({ board: layer.board, bevel: layer.bevel, trimBack: layer.trimBack })),
    },
    openings: mat.openings.map(() => ({ shape: 'rectangle', overlap: {}, measure: 'face' as const })),
    count: 1,
    bench: {
      head: { ...plainHead, ...bench.head },
      guide: { graduation: 1, a: 0, b: 1, ...bench.guide },
      graduation: bench.graduation ?? 1,
      snap: false,
      stack: bench.stack ?? 'together',
      mark: 'pattern',
    },
    print: {
      paper: 'a4',
      margin: side4(6),
      lap: 10,
      join: 'lap',
      transfer: 'prick',
      paperThickness: 0.1,
      ...bench.print,
    },
  };
}

/** 400 × 500, lopsided: face opening 240 × 300 with borders left 70, right 90, top 80, bottom 120. */
export const LOPSIDED = box(70, 80, 240, 300);
export const lopsidedMat = (thickness = 1.4, angle = 45, reverse = false): Mat =>
  makeMat(400, 500, [{ thickness, bevel: bevel(angle, reverse), faces: [LOPSIDED] }]);
