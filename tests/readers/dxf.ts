import DxfParser, { type IEntity, type ILineEntity, type ILwpolylineEntity, type IPolylineEntity } from 'dxf-parser';

/** A DXF read by a library, its polylines as chains of vertices with bulges. Lengths are as written. */
export interface ReadDxf {
  readonly header: Readonly<Record<string, unknown>>;
  readonly layers: Readonly<Record<string, unknown>>;
  readonly lineTypes: readonly string[];
  readonly lines: readonly DxfChain[];
  readonly polylines: readonly DxfChain[];
}

export interface DxfChain {
  readonly layer: string;
  readonly closed: boolean;
  readonly vertices: readonly { readonly x: number; readonly y: number; readonly bulge: number }[];
}

export function readDxf(text: string): ReadDxf {
  const dxf = new DxfParser().parseSync(text);
  if (dxf === null) throw new Error('the library reads nothing');
  const [lines, polylines]: [DxfChain[], DxfChain[]] = [[], []];
  for (const entity of dxf.entities as IEntity[]) {
    if (entity.type === 'LINE') {
      const { vertices, layer } = entity as ILineEntity;
      lines.push({ layer, closed: false, vertices: vertices.map(({ x, y }) => ({ x, y, bulge: 0 })) });
    } else if (entity.type === 'POLYLINE' || entity.type === 'LWPOLYLINE') {
      const { shape, vertices, layer } = entity as IPolylineEntity & ILwpolylineEntity;
      const chain = vertices.map(({ x, y, bulge }) => ({ x, y, bulge: bulge ?? 0 }));
      polylines.push({ layer, closed: shape === true, vertices: chain });
    } else throw new Error(`a ${entity.type} is not known to this reader`);
  }
  return {
    header: dxf.header as Record<string, unknown>,
    layers: { ...dxf.tables.layer.layers },
    lineTypes: Object.keys(dxf.tables.lineType.lineTypes),
    lines,
    polylines,
  };
}

/**
 * The way along a chain by length, bulges as the arcs that they mean: the bulge is the tangent of a quarter of the angle,
 * positive counterclockwise where y runs up (Autodesk DXF reference).
 */
export function chainLength({ vertices, closed }: DxfChain): number {
  let sum = 0;
  for (let i = 0; i < vertices.length - (closed ? 0 : 1); i++) {
    const [a, b] = [vertices[i]!, vertices[(i + 1) % vertices.length]!];
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const angle = 4 * Math.atan(Math.abs(a.bulge));
    sum += a.bulge === 0 ? chord : (chord * (angle / 2)) / Math.sin(angle / 2);
  }
  return sum;
}

/** Points along a chain, `step` apart or nearer. */
export function chainPoints({ vertices, closed }: DxfChain, step: number): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [{ x: vertices[0]!.x, y: vertices[0]!.y }];
  for (let i = 0; i < vertices.length - (closed ? 0 : 1); i++) {
    const [a, b] = [vertices[i]!, vertices[(i + 1) % vertices.length]!];
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const angle = 4 * Math.atan(a.bulge);
    const count = Math.max(1, Math.ceil(chord / step), Math.ceil(Math.abs(angle) / 0.01));
    for (let n = 1; n <= count; n++) {
      const t = n / count;
      if (a.bulge === 0) {
        points.push({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
        continue;
      }
      // The centre lies on the chord's perpendicular, to its left for a positive bulge of less than half a turn.
      const radius = chord / 2 / Math.sin(angle / 2);
      const height = radius * Math.cos(angle / 2);
      const centre = {
        x: (a.x + b.x) / 2 - ((b.y - a.y) / chord) * height,
        y: (a.y + b.y) / 2 + ((b.x - a.x) / chord) * height,
      };
      const from = Math.atan2(a.y - centre.y, a.x - centre.x) + angle * t;
      points.push({
        x: centre.x + Math.abs(radius) * Math.cos(from),
        y: centre.y + Math.abs(radius) * Math.sin(from),
      });
    }
  }
  return points;
}
