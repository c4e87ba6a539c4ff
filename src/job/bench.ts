import type { Side } from '../geometry/sides.ts';
import type { Guide } from '../shop/guide.ts';
import type { Head } from '../shop/head.ts';

export interface BenchRequest {
  readonly head: Head;
  readonly guide: Guide;
  /** The graduation that settings are rounded to, mm. */
  readonly graduation: number;
  readonly snap: boolean;
  readonly stack: 'together' | 'apart';
  /** The edge along which window and backing hinge together; undefined: the longer one, left or top. */
  readonly hinge?: Side;
}
