import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { type Matrix, MM_PER_POINT } from './pdf-geometry.ts';
import { PageReader } from './pdf-page.ts';

/**
 * Reads a PDF back with pdf.js, from its operator lists alone: nothing of the engine is used, not even its units.
 * Everything comes out in mm from the page's top left, x right, y down, with every transformation applied.
 */
export interface ReadPdf {
  readonly title: string;
  readonly subject: string;
  readonly language: string;
  readonly viewerPreferences: Readonly<Record<string, unknown>>;
  /** Optional layers, in the order of the file, and whether a reader shows them at first. */
  readonly layers: readonly { readonly name: string; readonly shown: boolean }[];
  readonly pages: readonly ReadPage[];
}

export interface ReadPage {
  /** From 1. */
  readonly number: number;
  readonly width: number;
  readonly height: number;
  readonly widthPt: number;
  readonly heightPt: number;
  /** Straight pieces of paths, one for each; the closing side of a closed path too. In painting order. */
  readonly lines: readonly ReadLine[];
  readonly curves: readonly ReadCurve[];
  readonly texts: readonly ReadText[];
}

export interface ReadPoint {
  readonly x: number;
  readonly y: number;
}
export interface ReadBox extends ReadPoint {
  readonly width: number;
  readonly height: number;
}

/** How and where something is painted. */
export interface Painted {
  readonly page: number;
  /** What of the page it may mark: every clip so far, rectangles all. */
  readonly clip: ReadBox;
  /** True for the drawing (inside the form), false for the page's own furniture. */
  readonly form: boolean;
  /** Name of the optional layer that it stands in. */
  readonly layer: string | undefined;
  /** False where that layer is off at first. */
  readonly shown: boolean;
}

export interface ReadStroke extends Painted {
  /** Pieces of one painted path share a number, which counts from 0 on each page. */
  readonly path: number;
  readonly widthPt: number;
  /** On, off … in mm; empty is solid. */
  readonly dash: readonly number[];
  readonly cap: 'butt' | 'round' | 'square';
  /** `#rrggbb`; undefined where the path is not stroked. */
  readonly stroke: string | undefined;
  /** `#rrggbb`; undefined where the path is not filled. */
  readonly fill: string | undefined;
}

export interface ReadLine extends ReadStroke {
  readonly from: ReadPoint;
  readonly to: ReadPoint;
}

export interface ReadCurve extends ReadLine {
  readonly c1: ReadPoint;
  readonly c2: ReadPoint;
}

export interface ReadText extends Painted {
  readonly text: string;
  /** Start of the base line. */
  readonly at: ReadPoint;
  /** Em, mm. */
  readonly size: number;
  /** Along the base line, mm. */
  readonly width: number;
  /** Degrees clockwise, in [0, 360). */
  readonly turn: number;
  readonly fill: string;
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({
    data: new Uint8Array(bytes),
    verbosity: 0,
    useSystemFonts: false,
    isEvalSupported: false,
  });
  const file = await task.promise;
  try {
    const info = { ...(await file.getMetadata()).info } as Readonly<Record<string, string>>;
    const config = await file.getOptionalContentConfig();
    const groups = (config.getGroups() ?? {}) as Record<string, { name: string }>;
    const layers = new Map(
      Object.entries(groups).map(([id, { name }]) => [id, { name, shown: config.isVisible({ type: 'OCG', id }) }]),
    );
    const pages: ReadPage[] = [];
    for (let number = 1; number <= file.numPages; number++) {
      const page = await file.getPage(number);
      const [left, bottom, right, top] = page.view as [number, number, number, number];
      const list = await page.getOperatorList();
      const toPage: Matrix = [MM_PER_POINT, 0, 0, -MM_PER_POINT, -left * MM_PER_POINT, top * MM_PER_POINT];
      const [width, height] = [(right - left) * MM_PER_POINT, (top - bottom) * MM_PER_POINT];
      const reader = new PageReader(number, toPage, { x: 0, y: 0, width, height }, layers);
      list.fnArray.forEach((fn, i) => {
        reader.step(fn, (list.argsArray[i] ?? []) as unknown[]);
      });
      const { lines, curves, texts } = reader;
      pages.push({ number, width, height, widthPt: right - left, heightPt: top - bottom, lines, curves, texts });
      page.cleanup();
    }
    return {
      title: info.Title ?? '',
      subject: info.Subject ?? '',
      language: info.Language ?? '',
      viewerPreferences: ((await file.getViewerPreferences()) ?? {}) as Record<string, unknown>,
      layers: [...layers.values()],
      pages,
    };
  } finally {
    await task.destroy();
  }
}

/** The piece of a line that its clip lets through; undefined where none is. */
export function visible(line: ReadLine): { readonly from: ReadPoint; readonly to: ReadPoint } | undefined {
  const { from, to, clip } = line;
  let [first, last] = [0, 1];
  for (const [start, end, low, high] of [
    [from.x, to.x, clip.x, clip.x + clip.width],
    [from.y, to.y, clip.y, clip.y + clip.height],
  ] as const) {
    if (start === end) {
      if (start < low || start > high) return undefined;
    } else {
      const [a, b] = [(low - start) / (end - start), (high - start) / (end - start)];
      first = Math.max(first, Math.min(a, b));
      last = Math.min(last, Math.max(a, b));
    }
  }
  if (first > last) return undefined;
  const at = (k: number): ReadPoint => ({ x: from.x + (to.x - from.x) * k, y: from.y + (to.y - from.y) * k });
  return { from: at(first), to: at(last) };
}
