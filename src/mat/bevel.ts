import type { Bevel } from '../job/layer.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The bevel's width seen from the front: thickness × cot(angle); a square cut has exactly none. */
export function setback(thickness: number, bevel: Bevel): number {
  return bevel.angle === 90 ? 0 : thickness / Math.tan(radians(bevel.angle));
}

/** The width of the bevel's own sloping face: thickness ÷ sin(angle). */
export function bevelFace(thickness: number, bevel: Bevel): number {
  return bevel.angle === 90 ? thickness : thickness / Math.sin(radians(bevel.angle));
}

/** From the face line to the back line, towards the middle of the opening: negative where the bevel is reversed. */
export function backInset(thickness: number, bevel: Bevel): number {
  return bevel.reverse ? -setback(thickness, bevel) : setback(thickness, bevel);
}
