import { penOf } from '../../drawing/bounds.ts';
import type { Drawing, Item, Pen } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { withArcs } from '../../geometry/arcs.ts';
import { type Box, union } from '../../geometry/box.ts';
import { pathBox } from '../../geometry/extent.ts';
import { itemPaths } from '../item-paths.ts';
import { namedGroups } from '../shown.ts';
import { colourIndex } from './colour.ts';
import { type DxfEntity, type DxfLayer, type DxfLineType, type DxfModel, polyline } from './model.ts';
import { r12 } from './r12.ts';
import { r2000 } from './r2000.ts';

export const DXF_DIALECTS = ['r12', 'r2000'] as const;
export type DxfDialect = (typeof DXF_DIALECTS)[number];

export interface DxfOptions {
  /** With their outlines. */
  readonly fonts: Fonts;
  readonly show?: readonly string[];
  readonly dialect?: DxfDialect;
  /** How far arcs may lie from the curves that they stand in for, mm. */
  readonly tolerance?: number;
  /** Remarks at the head of the file. */
  readonly comment?: readonly string[];
}

const TOLERANCE = 0.01;
const CONTINUOUS = 'CONTINUOUS';

/**
 * A drawing as ASCII DXF in mm, y up from the lower left corner of the drawing. Each group is a layer in its pen's colour.
 * Lines are lines; paths are polylines with bulges, closed ones closed by their flag; cubics go out as arcs; words as
 * outlines. R12 has the old polyline, which every reader knows, R2000 the light one. The same drawing gives the same text.
 * Source: Autodesk DXF reference (R12 and 2000).
 */
export function writeDxf(drawing: Drawing, options: DxfOptions): string {
  const { tolerance = TOLERANCE, dialect = 'r12', comment = [] } = options;
  const groups =
    options.show === undefined ? drawing.groups.filter((g) => g.shown) : namedGroups(drawing, options.show);
  const lineTypes = new Map<string, DxfLineType>();
  const layers = new Map<string, DxfLayer>();
  const entities: DxfEntity[] = [];
  const boxes: Box[] = [];
  const up = (y: number): number => drawing.height - y;
  for (const group of groups) {
    for (const item of group.items) {
      const pen = penFor(item, drawing);
      const colour = colourIndex(pen.colour);
      const lineType = lineTypeOf(pen, lineTypes);
      const layer = layers.get(group.name) ?? { name: group.name, colour, lineType };
      layers.set(group.name, layer);
      const own = {
        layer: layer.name,
        ...(colour === layer.colour ? {} : { colour }),
        ...(lineType === layer.lineType ? {} : { lineType }),
      };
      if (item.kind === 'line') {
        entities.push({
          kind: 'line',
          ...own,
          from: { x: item.from.x, y: up(item.from.y) },
          to: { x: item.to.x, y: up(item.to.y) },
        });
        boxes.push(pathBox({ start: item.from, segments: [{ kind: 'line', to: item.to }], closed: false }));
        continue;
      }
      for (const path of itemPaths(item, options.fonts)) {
        const round = withArcs(path, tolerance);
        const vertices = polyline(round, up);
        if (vertices.length < 2) continue;
        entities.push({ kind: 'polyline', ...own, closed: path.closed, vertices });
        boxes.push(pathBox(round));
      }
    }
  }
  const box = boxes.length === 0 ? { x: 0, y: 0, width: 0, height: 0 } : union(boxes);
  const model: DxfModel = {
    comment: comment.map(plain),
    lineTypes: [{ name: CONTINUOUS, dash: [] }, ...lineTypes.values()],
    layers: [{ name: '0', colour: 7, lineType: CONTINUOUS }, ...layers.values()],
    entities,
    least: { x: box.x, y: up(box.y + box.height) },
    most: { x: box.x + box.width, y: up(box.y) },
  };
  switch (dialect) {
    case 'r12':
      return r12(model);
    case 'r2000':
      return r2000(model);
    default: {
      const never: never = dialect;
      throw new TypeError(`unknown dialect ${JSON.stringify(never)}`);
    }
  }
}

/** One line of ASCII: readers disagree about everything else. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll('×', 'x')
    .replaceAll('°', ' deg')
    .replaceAll(/[’‘]/gu, "'")
    .replaceAll(/[^ -~]/gu, '')
    .slice(0, 250);

const FILL: Omit<Pen, 'colour'> = { width: 0, dash: [], cap: 'butt' };

function penFor(item: Item, { pens }: Drawing): Pen {
  switch (item.kind) {
    case 'line':
      return penOf(item.pen, pens);
    case 'path':
      return item.pen === undefined ? { ...FILL, colour: item.fill ?? 0 } : penOf(item.pen, pens);
    case 'text':
      return { ...FILL, colour: item.colour };
    case 'picture':
      throw new TypeError(`no picture is named ${JSON.stringify(item.picture)}`);
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}

/** The name of the line type of a pen, declared when it is first wanted. */
function lineTypeOf({ dash }: Pen, known: Map<string, DxfLineType>): string {
  if (dash.length === 0) return CONTINUOUS;
  const key = dash.join(' ');
  const found = known.get(key) ?? { name: `DASHED${known.size + 1}`, dash };
  known.set(key, found);
  return found.name;
}
