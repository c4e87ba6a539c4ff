/** The package brings no types; this is the part of it that is used. */
declare module 'svgdom' {
  import type { SvgWindow } from './svg-window.ts';
  /** A window whose document is one empty `svg` element. */
  export function createSVGWindow(): SvgWindow;
}
