import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

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

/** a b c d e f: x' = a·x + c·y + e, y' = b·x + d·y + f. */
type Matrix = readonly [number, number, number, number, number, number];

const MM_PER_POINT = 25.4 / 72;
const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** `inner` first, then `outer`. */
function times(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

const through = ([a, b, c, d, e, f]: Matrix, x: number, y: number): ReadPoint => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

const stretch = ([a, b, c, d]: Matrix): number => Math.sqrt(Math.abs(a * d - b * c));

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({
    data: new Uint8Array(bytes),
    verbosity: 0,
    useSystemFonts: false,
    isEvalSupported: false,
  });
  const file = await task.promise;
  try {
    const { info } = (await file.getMetadata()) as unknown as { info: Record<string, string> };
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

/** Whether two lines are the same within `tolerance` mm at both ends; either way round. */
export function sameLine(
  a: { readonly from: ReadPoint; readonly to: ReadPoint },
  b: { readonly from: ReadPoint; readonly to: ReadPoint },
  tolerance: number,
): boolean {
  const near = (p: ReadPoint, q: ReadPoint): boolean => Math.hypot(p.x - q.x, p.y - q.y) <= tolerance;
  return (near(a.from, b.from) && near(a.to, b.to)) || (near(a.from, b.to) && near(a.to, b.from));
}

interface State {
  matrix: Matrix;
  clip: ReadBox;
  width: number;
  dash: readonly number[];
  cap: ReadStroke['cap'];
  stroke: string;
  fill: string;
  size: number;
  form: boolean;
}

type Piece = { readonly from: ReadPoint; readonly to: ReadPoint; readonly controls?: readonly [ReadPoint, ReadPoint] };

/** By the id of their group. */
type LayerStates = ReadonlyMap<string, { readonly name: string; readonly shown: boolean }>;

/** Every operator is read or known to mark nothing: an unexpected one is an error, so that nothing is overlooked. */
class PageReader {
  readonly lines: ReadLine[] = [];
  readonly curves: ReadCurve[] = [];
  readonly texts: ReadText[] = [];
  readonly #page: number;
  readonly #layers: LayerStates;
  readonly #saved: State[] = [];
  readonly #marked: (string | undefined)[] = [];
  #state: State;
  #pieces: Piece[] = [];
  #clips = false;
  #paths = 0;
  #text: Matrix = IDENTITY;

  constructor(page: number, matrix: Matrix, clip: ReadBox, layers: LayerStates) {
    this.#page = page;
    this.#layers = layers;
    const pen = { width: 1, dash: [], cap: 'butt', stroke: '#000000', fill: '#000000' } as const;
    this.#state = { matrix, clip, ...pen, size: 0, form: false };
  }

  step(fn: number, args: unknown[]): void {
    const state = this.#state;
    const numbers = args as number[];
    switch (fn) {
      case OPS.save:
        this.#saved.push({ ...state });
        break;
      case OPS.restore:
        this.#restore();
        break;
      case OPS.transform:
        state.matrix = times(state.matrix, args as unknown as Matrix);
        break;
      case OPS.paintFormXObjectBegin:
        this.#saved.push({ ...state });
        this.#beginForm(args[0] as Matrix | null, args[1] as [number, number, number, number] | null);
        break;
      case OPS.paintFormXObjectEnd:
        this.#restore();
        break;
      case OPS.setLineWidth:
        state.width = numbers[0]!;
        break;
      case OPS.setLineCap:
        state.cap = (['butt', 'round', 'square'] as const)[numbers[0]!]!;
        break;
      case OPS.setDash:
        state.dash = args[0] as number[];
        break;
      case OPS.setStrokeRGBColor:
        state.stroke = hex(args);
        break;
      case OPS.setFillRGBColor:
        state.fill = hex(args);
        break;
      case OPS.constructPath:
        this.#construct(args[0] as number[], args[1] as number[]);
        break;
      case OPS.clip:
      case OPS.eoClip:
        this.#clips = true;
        break;
      case OPS.endPath:
        this.#paint(false, false);
        break;
      case OPS.stroke:
        this.#paint(true, false);
        break;
      case OPS.fill:
      case OPS.eoFill:
        this.#paint(false, true);
        break;
      case OPS.fillStroke:
      case OPS.eoFillStroke:
        this.#paint(true, true);
        break;
      case OPS.beginMarkedContentProps:
        this.#marked.push(args[0] === 'OC' ? (args[1] as { id: string }).id : undefined);
        break;
      case OPS.beginMarkedContent:
        this.#marked.push(undefined);
        break;
      case OPS.endMarkedContent:
        this.#marked.pop();
        break;
      case OPS.beginText:
        this.#text = IDENTITY;
        break;
      case OPS.setTextMatrix:
        this.#text = args as unknown as Matrix;
        break;
      case OPS.setFont:
        state.size = numbers[1]!;
        break;
      case OPS.showText:
        this.#showText(args[0] as (number | { unicode: string; width: number })[]);
        break;
      case OPS.setLineJoin:
      case OPS.endText:
      case OPS.dependency:
      case OPS.paintImageXObject:
        break;
      default:
        throw new Error(`page ${this.#page} uses operator ${fn}, which this reader does not know`);
    }
  }

  #restore(): void {
    const saved = this.#saved.pop();
    if (saved === undefined) throw new Error(`page ${this.#page} restores a state that was never saved`);
    this.#state = saved;
  }

  #beginForm(matrix: Matrix | null, bbox: readonly [number, number, number, number] | null): void {
    const state = this.#state;
    state.form = true;
    if (matrix !== null) state.matrix = times(state.matrix, matrix);
    if (bbox === null) return;
    state.clip = common(
      state.clip,
      boxOf([through(state.matrix, bbox[0], bbox[1]), through(state.matrix, bbox[2], bbox[3])]),
    );
  }

  #construct(operators: readonly number[], numbers: readonly number[]): void {
    let i = 0;
    const next = (): ReadPoint => through(this.#state.matrix, numbers[i++]!, numbers[i++]!);
    let start: ReadPoint = { x: 0, y: 0 };
    let from = start;
    const lineTo = (to: ReadPoint): void => {
      this.#pieces.push({ from, to });
      from = to;
    };
    for (const operator of operators) {
      switch (operator) {
        case OPS.moveTo:
          start = next();
          from = start;
          break;
        case OPS.lineTo:
          lineTo(next());
          break;
        case OPS.curveTo: {
          const controls = [next(), next()] as const;
          const to = next();
          this.#pieces.push({ from, to, controls });
          from = to;
          break;
        }
        case OPS.closePath:
          if (Math.hypot(from.x - start.x, from.y - start.y) > 1e-6) lineTo(start);
          break;
        case OPS.rectangle: {
          const [x, y, width, height] = [numbers[i++]!, numbers[i++]!, numbers[i++]!, numbers[i++]!];
          start = through(this.#state.matrix, x, y);
          from = start;
          lineTo(through(this.#state.matrix, x + width, y));
          lineTo(through(this.#state.matrix, x + width, y + height));
          lineTo(through(this.#state.matrix, x, y + height));
          lineTo(start);
          break;
        }
        default:
          throw new Error(`page ${this.#page} builds a path with operator ${operator}`);
      }
    }
  }

  #paint(stroked: boolean, filled: boolean): void {
    const { matrix, width, dash, cap, stroke, fill } = this.#state;
    const k = stretch(matrix);
    const style: ReadStroke = {
      ...this.#where(),
      path: this.#paths++,
      widthPt: (width * k) / MM_PER_POINT,
      dash: dash.map((part) => part * k),
      cap,
      stroke: stroked ? stroke : undefined,
      fill: filled ? fill : undefined,
    };
    if (stroked || filled) {
      for (const { from, to, controls } of this.#pieces) {
        if (controls === undefined) this.lines.push({ ...style, from, to });
        else this.curves.push({ ...style, from, to, c1: controls[0], c2: controls[1] });
      }
    }
    if (this.#clips) this.#state.clip = common(this.#state.clip, this.#clipBox());
    this.#clips = false;
    this.#pieces = [];
  }

  #clipBox(): ReadBox {
    const upright = this.#pieces.every(({ from, to, controls }) => {
      return controls === undefined && (Math.abs(from.x - to.x) < 1e-6 || Math.abs(from.y - to.y) < 1e-6);
    });
    if (!upright || this.#pieces.length !== 4) throw new Error(`page ${this.#page} clips by more than a rectangle`);
    return boxOf(this.#pieces.map((piece) => piece.from));
  }

  #showText(glyphs: readonly (number | { readonly unicode: string; readonly width: number })[]): void {
    const { matrix, size, fill } = this.#state;
    const place = times(matrix, this.#text);
    const at = through(place, 0, 0);
    let text = '';
    let advance = 0;
    for (const glyph of glyphs) {
      if (typeof glyph === 'number') {
        advance -= (glyph / 1000) * size;
      } else {
        text += glyph.unicode;
        advance += (glyph.width / 1000) * size;
      }
    }
    const end = through(place, advance, 0);
    const turn = ((Math.atan2(place[1], place[0]) * 180) / Math.PI + 360) % 360;
    const width = Math.hypot(end.x - at.x, end.y - at.y);
    this.texts.push({ ...this.#where(), text, at, size: size * Math.hypot(place[2], place[3]), width, turn, fill });
    this.#text = times(this.#text, [1, 0, 0, 1, advance, 0]);
  }

  #where(): Painted {
    const id = this.#marked.findLast((mark) => mark !== undefined);
    const layer = id === undefined ? undefined : this.#layers.get(id);
    return {
      page: this.#page,
      clip: this.#state.clip,
      form: this.#state.form,
      layer: layer?.name,
      shown: layer?.shown ?? true,
    };
  }
}

function hex(parts: readonly unknown[]): string {
  const [r, g, b] = Array.from(parts as ArrayLike<number>);
  return `#${[r!, g!, b!].map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;
}

function boxOf(points: readonly ReadPoint[]): ReadBox {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** What two boxes share; without size where they share nothing. */
function common(a: ReadBox, b: ReadBox): ReadBox {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  const width = Math.max(0, Math.min(a.x + a.width, b.x + b.width) - x);
  const height = Math.max(0, Math.min(a.y + a.height, b.y + b.height) - y);
  return { x, y, width, height };
}
