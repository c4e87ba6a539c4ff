import type { Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Box, bottom, box, right } from '../../geometry/box.ts';
import { polygon } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { type Block, turnedBlock } from '../../text/block.ts';
import { capHeight, set, widthOf } from '../../text/line.ts';
import { FINE, HEAD } from '../../text/styles.ts';
import { ARM, type Cross } from './crosses.ts';

export type Edge = 'top' | 'right' | 'bottom' | 'left';

/** One edge of a sheet that is joined to a neighbour, page mm. */
export interface Join {
  readonly edge: Edge;
  /** x of an upright join line, y of a level one. */
  readonly at: number;
  readonly neighbour: string;
  readonly crosses: readonly Cross[];
}

const isUpright = (edge: Edge): boolean => edge === 'left' || edge === 'right';

/** The join line, from end to end of what the sheet shows. */
export function joinLine({ edge, at }: Join, area: Box): Item {
  return isUpright(edge)
    ? {
        kind: 'line',
        pen: 'join',
        from: { x: at, y: area.y + 1 },
        to: { x: at, y: bottom(area) - 1 },
        id: `join-${edge}`,
      }
    : {
        kind: 'line',
        pen: 'join',
        from: { x: area.x + 1, y: at },
        to: { x: right(area) - 1, y: at },
        id: `join-${edge}`,
      };
}

/** A cross with its name on this sheet's own side of the join line, so that both names are seen once it is taped. */
export function crossItems(name: string, at: Point, edge: Edge, area: Box, fonts: Fonts): readonly Item[] {
  const left = Math.max(area.x, at.x - ARM);
  const top = Math.max(area.y, at.y - ARM);
  const level: Item = {
    kind: 'line',
    pen: 'cross',
    from: { x: left, y: at.y },
    to: { x: Math.min(right(area), at.x + ARM), y: at.y },
    id: `cross ${name} level`,
  };
  const upright: Item = {
    kind: 'line',
    pen: 'cross',
    from: { x: at.x, y: top },
    to: { x: at.x, y: Math.min(bottom(area), at.y + ARM) },
    id: `cross ${name} upright`,
  };
  const above = edge !== 'top';
  const y = above ? at.y - 1 : at.y + 1 + capHeight(FINE, fonts);
  const label = set(name, edge === 'right' ? at.x - 1 : at.x + 1, y, FINE, edge === 'right' ? 'end' : 'start');
  return [level, upright, label];
}

/** What a cross and its name take up. */
export function crossBox(name: string, at: Point, edge: Edge, fonts: Fonts): Box {
  const wide = widthOf(name, FINE, fonts) + 1;
  return edge === 'right'
    ? box(at.x - wide, at.y - ARM, wide + ARM, 2 * ARM)
    : box(at.x - ARM, at.y - ARM, wide + ARM, 2 * ARM);
}

/** An arrow and the neighbour's name, along the edge that leads to it. */
export function neighbourBlock({ edge, neighbour }: Join, fonts: Fonts): Block {
  switch (edge) {
    case 'top':
      return arrowAndName(neighbour, 'up', fonts);
    case 'bottom':
      return arrowAndName(neighbour, 'down', fonts);
    case 'right':
      return turnedBlock(arrowAndName(neighbour, 'up', fonts), 90);
    case 'left':
      return turnedBlock(arrowAndName(neighbour, 'up', fonts), 270);
    default: {
      const never: never = edge;
      throw new TypeError(`unknown edge ${JSON.stringify(never)}`);
    }
  }
}

function arrowAndName(name: string, way: 'up' | 'down', fonts: Fonts): Block {
  const height = capHeight(HEAD, fonts);
  const [tip, foot] = way === 'up' ? [0, height] : [height, 0];
  const arrow = polygon([
    { x: height / 2, y: tip },
    { x: height, y: foot },
    { x: 0, y: foot },
  ]);
  return {
    width: height + 1.2 + widthOf(name, HEAD, fonts),
    height,
    items: [{ kind: 'path', fill: 0, paths: [arrow] }, set(name, height + 1.2, height, HEAD)],
  };
}
