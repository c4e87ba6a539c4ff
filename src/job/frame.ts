import type { Size } from '../geometry/point.ts';
import type { PackagePart } from '../shop/frame.ts';
import type { Rate } from '../shop/rate.ts';

/** Exactly one of `inside` (measured in the rebate; clearance comes off) and `nominal` (clearance already in it). */
export interface FrameRequest {
  readonly inside?: Size;
  readonly nominal?: Size;
  /** Over all, not per side. */
  readonly clearance: number;
  /** How much of the mat the frame's lip covers on each side. */
  readonly lip: number;
  /** Of a frame or a moulding of the shop. */
  readonly name?: string;
  /** Of the rebate. */
  readonly depth?: number;
  readonly glazing?: PackagePart;
  readonly backing?: PackagePart;
  /** Width of the moulding's face, from the edge of its sight to its outside. */
  readonly width?: number;
  /** `#rrggbb`, of the moulding's face. */
  readonly colour?: string;
  /** Of the frame or its moulding. */
  readonly price?: Rate;
  /** Between glazing and mat, or between mat and art. */
  readonly spacer?: number;
  /** Thickness of the artwork with its support. */
  readonly art?: number;
}
