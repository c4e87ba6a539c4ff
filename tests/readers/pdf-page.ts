import { OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { boxOf, common, IDENTITY, type Matrix, MM_PER_POINT, stretch, through, times } from './pdf-geometry.ts';
import type { Painted, ReadBox, ReadCurve, ReadLine, ReadPoint, ReadStroke, ReadText } from './pdf-lines.ts';

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
export type LayerStates = ReadonlyMap<string, { readonly name: string; readonly shown: boolean }>;

/** Every operator is read or known to mark nothing: an unexpected one is an error, so that nothing is overlooked. */
export class PageReader {
  readonly lines: ReadLine[] = [];
  readonly curves: ReadCurve[] = [];
  readonly texts: ReadText[] = [];
  readonly #page: number;
  readonly #layers: LayerStates;
  readonly #saved: State[] = [];
  readonly #marked: (string | undefined)[] = [];
  #state: State;
  #pieces: Piece[] = [];
  /** Of the subpath that is being built: pdf.js may hand a path over in several parts. */
  #start: ReadPoint = { x: Number.NaN, y: Number.NaN };
  #from: ReadPoint = this.#start;
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
        state.matrix = times(state.matrix, matrixOf(numbers));
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
        state.stroke = hex(numbers);
        break;
      case OPS.setFillRGBColor:
        state.fill = hex(numbers);
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
        this.#text = matrixOf(numbers);
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
    const lineTo = (to: ReadPoint): void => {
      this.#pieces.push({ from: this.#from, to });
      this.#from = to;
    };
    for (const operator of operators) {
      switch (operator) {
        case OPS.moveTo:
          this.#start = next();
          this.#from = this.#start;
          break;
        case OPS.lineTo:
          lineTo(next());
          break;
        case OPS.curveTo: {
          const controls = [next(), next()] as const;
          const to = next();
          this.#pieces.push({ from: this.#from, to, controls });
          this.#from = to;
          break;
        }
        case OPS.closePath:
          if (Math.hypot(this.#from.x - this.#start.x, this.#from.y - this.#start.y) > 1e-6) lineTo(this.#start);
          break;
        case OPS.rectangle: {
          const [x, y, width, height] = [numbers[i++]!, numbers[i++]!, numbers[i++]!, numbers[i++]!];
          this.#start = through(this.#state.matrix, x, y);
          this.#from = this.#start;
          lineTo(through(this.#state.matrix, x + width, y));
          lineTo(through(this.#state.matrix, x + width, y + height));
          lineTo(through(this.#state.matrix, x, y + height));
          lineTo(this.#start);
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

function hex(parts: ArrayLike<number>): string {
  const [r, g, b] = Array.from(parts);
  return `#${[r!, g!, b!].map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;
}

function matrixOf([a, b, c, d, e, f]: readonly number[]): Matrix {
  return [a!, b!, c!, d!, e!, f!];
}
