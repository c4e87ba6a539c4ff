import type { Document } from '../drawing/document.ts';
import type { Drawing } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import type { Pictures } from '../pictures/model.ts';
import { nearest } from '../problems/nearest.ts';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import type { DxfDialect } from './dxf/dxf.ts';
import type { HpglOptions } from './hpgl.ts';
import { loadSvg } from './svg/load.ts';

export interface WriteOptions {
  /** Names of the groups to show, and no others. */
  readonly show?: readonly string[];
  readonly fonts: Fonts;
  /** As in `SvgOptions`. */
  readonly family?: string;
  readonly pictures?: Pictures;
  /** Remarks that a file has room for where no machine takes them for lines. */
  readonly comment?: readonly string[];
  /** How far what stands in for a curve may lie from it, mm, in formats that know no cubics. */
  readonly tolerance?: number;
  readonly dialect?: DxfDialect;
  readonly plotter?: Omit<HpglOptions, 'show' | 'comment' | 'tolerance'>;
}

interface Described {
  readonly id: string;
  /** Of its files, without the point. */
  readonly extension: string;
  /** For lists: one line. */
  readonly summary: string;
}

/** Written from pages. */
export interface DocumentFormat extends Described {
  readonly of: 'document';
  readonly load: () => Promise<(document: Document, options: WriteOptions) => Promise<Uint8Array>>;
}

/** Written from one drawing. */
export interface DrawingFormat extends Described {
  readonly of: 'drawing';
  readonly load: () => Promise<(drawing: Drawing, options: WriteOptions) => Uint8Array>;
}

export type Format = DocumentFormat | DrawingFormat;

/** Every format that there is. A writer is loaded when it is wanted and not before. */
export const FORMATS: readonly Format[] = [
  {
    id: 'pdf',
    extension: 'pdf',
    summary: 'pages to print, at full scale',
    of: 'document',
    load: () => import('./pdf/pdf.ts').then(({ writePdf }) => writePdf),
  },
  {
    id: 'svg',
    extension: 'svg',
    summary: 'one drawing in mm, letters as outlines',
    of: 'drawing',
    load: () => loadSvg().then(({ encodeSvg }) => encodeSvg),
  },
  {
    id: 'dxf',
    extension: 'dxf',
    summary: 'one drawing in mm for machines: lines and polylines with bulges on layers',
    of: 'drawing',
    load: () =>
      import('./dxf/dxf.ts').then(({ writeDxf }) => {
        return (drawing, options) => new TextEncoder().encode(writeDxf(drawing, options));
      }),
  },
  {
    id: 'hpgl',
    extension: 'plt',
    summary: 'one drawing for plotters, 40 units a millimetre',
    of: 'drawing',
    load: () =>
      import('./hpgl.ts').then(({ writeHpgl }) => {
        return (drawing, { plotter, fonts: _, ...options }) =>
          new TextEncoder().encode(writeHpgl(drawing, { ...options, ...plotter }));
      }),
  },
];

/** The format of that name among `formats`; an unknown name is a problem that says the nearest. */
export function findFormat<T extends Format>(
  id: string,
  formats: readonly T[],
  path: readonly (string | number)[] = [],
): Result<T> {
  const found = formats.find((format) => format.id === id.toLowerCase());
  if (found !== undefined) return succeed(found);
  const known = formats.map((format) => format.id);
  const near = nearest(id, known);
  return fail([
    error(
      'format-unknown',
      path,
      `there is no format ${JSON.stringify(id)} here, only ${known.join(', ')}`,
      near === undefined ? `choose one of ${known.join(', ')}` : `did you mean ${near}?`,
    ),
  ]);
}
