import { SHAPES } from '../shapes/shapes.ts';
import type { MatOpening, OpeningLayer } from './model.ts';
import type { PlacedOpening } from './placed.ts';

/** Draws the face and back lines of every layer; undefined where one of them has nothing left. */
export function outlined(placed: PlacedOpening): MatOpening | undefined {
  const shape = SHAPES[placed.shape];
  const layers: OpeningLayer[] = [];
  for (const layer of placed.layers) {
    const face = shape.parallel(layer.faceBox, 0);
    // Towards the middle of the opening for a normal bevel, away from it for a reversed one.
    const back = shape.parallel(layer.faceBox, layer.faceBox.x - layer.backBox.x);
    if (face === undefined || back === undefined) return undefined;
    layers.push({ ...layer, face, back });
  }
  return { ...placed, layers };
}
