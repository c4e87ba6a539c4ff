import { type Piece, piecesOf, sweepOf } from '../../geometry/curves.ts';
import type { Path } from '../../geometry/path.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { decimal } from '../decimal.ts';

/** What a DXF file holds, y up, before a dialect makes text of it. */
export interface DxfModel {
  readonly comment: readonly string[];
  readonly lineTypes: readonly DxfLineType[];
  readonly layers: readonly DxfLayer[];
  readonly entities: readonly DxfEntity[];
  /** Extents of everything that is drawn. */
  readonly least: Point;
  readonly most: Point;
}

export interface DxfLineType {
  readonly name: string;
  /** On, off, on, off … in mm; empty is continuous. */
  readonly dash: readonly number[];
}

export interface DxfLayer {
  readonly name: string;
  readonly colour: number;
  readonly lineType: string;
}

interface Own {
  readonly layer: string;
  /** Where it differs from the layer's. */
  readonly colour?: number;
  readonly lineType?: string;
}

export type DxfEntity =
  | (Own & { readonly kind: 'line'; readonly from: Point; readonly to: Point })
  | (Own & { readonly kind: 'polyline'; readonly closed: boolean; readonly vertices: readonly Vertex[] });

export interface Vertex extends Point {
  /** Tangent of a quarter of the turn to the next vertex, positive counterclockwise; 0 is a straight line. */
  readonly bulge: number;
}

/** Six digits after the point are a nanometre. */
export const dxfNumber = (value: number): string => {
  const text = decimal(value, 6);
  return text.includes('.') ? text : `${text}.0`;
};

/** Nearer than this two vertices are written alike. */
const ALIKE = 1e-6;

/**
 * The vertices of a path of lines and arcs; a closed one does not repeat its first. A bulge says no more than just under a
 * full turn, and says it badly from half a turn on: longer arcs are parted.
 */
export function polyline(path: Path, up: (y: number) => number): readonly Vertex[] {
  const vertices: Vertex[] = [];
  const put = (p: Point, bulge: number): void => {
    const vertex = { x: p.x, y: up(p.y), bulge };
    const last = vertices.at(-1);
    // A stretch of no length has nothing to say; the next one starts where it did.
    if (last !== undefined && distance(last, vertex) < ALIKE) vertices.pop();
    vertices.push(vertex);
  };
  const pieces = piecesOf(path);
  for (const piece of pieces) for (const [from, bulge] of parts(piece)) put(from, bulge);
  const end = pieces.at(-1)?.segment.to ?? path.start;
  if (!path.closed) put(end, 0);
  else if (vertices.length > 1 && distance(vertices.at(-1)!, vertices[0]!) < ALIKE) vertices.pop();
  return vertices;
}

function parts({ from, segment }: Piece): readonly (readonly [Point, number])[] {
  switch (segment.kind) {
    case 'line':
      return [[from, 0]];
    case 'arc': {
      const { begin, sweep } = sweepOf(from, segment);
      const radius = distance(from, segment.centre);
      const count = Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - 1e-9));
      const step = sweep / count;
      return Array.from({ length: count }, (_, i) => {
        const angle = begin + i * step;
        const { x, y } = segment.centre;
        const start = i === 0 ? from : { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
        // Clockwise to the eye is a positive sweep here, and a negative bulge there.
        return [start, -Math.tan(step / 4)] as const;
      });
    }
    case 'cubic':
      throw new TypeError('a polyline has no cubics');
    default: {
      const never: never = segment;
      throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
    }
  }
}

/** Pairs of group code and value, each on a line of its own. */
export class Tags {
  readonly #lines: string[] = [];

  add(code: number, value: string | number): this {
    this.#lines.push(String(code), String(value));
    return this;
  }

  /** A coordinate: its code, and those of y and z ten and twenty higher. */
  point(code: number, { x, y }: Point, flat = false): this {
    this.add(code, dxfNumber(x)).add(code + 10, dxfNumber(y));
    return flat ? this : this.add(code + 20, '0.0');
  }

  toString(): string {
    return `${this.#lines.join('\n')}\n`;
  }
}

/** Millimetres (`$INSUNITS` 4, `$MEASUREMENT` 1) and the extents of what is drawn; the same in every dialect. */
export function headerTags(tags: Tags, model: DxfModel, version: string, handSeed?: string): void {
  for (const line of model.comment) tags.add(999, line);
  tags.add(0, 'SECTION').add(2, 'HEADER').add(9, '$ACADVER').add(1, version);
  if (handSeed !== undefined) tags.add(9, '$HANDSEED').add(5, handSeed);
  tags.add(9, '$INSUNITS').add(70, 4).add(9, '$MEASUREMENT').add(70, 1);
  tags.add(9, '$EXTMIN').point(10, model.least).add(9, '$EXTMAX').point(10, model.most);
  tags.add(9, '$LIMMIN').point(10, model.least, true).add(9, '$LIMMAX').point(10, model.most, true);
  tags.add(0, 'ENDSEC');
}

/** What a line type says of its dashes: on is positive, off negative. */
export function dashTags(tags: Tags, { dash }: DxfLineType): void {
  const even = dash.length % 2 === 1 ? [...dash, ...dash] : dash;
  const total = even.reduce((sum, part) => sum + part, 0);
  tags.add(72, 65).add(73, even.length).add(40, dxfNumber(total));
}

export const dashParts = ({ dash }: DxfLineType): readonly number[] =>
  (dash.length % 2 === 1 ? [...dash, ...dash] : dash).map((part, i) => (i % 2 === 0 ? part : -part));
