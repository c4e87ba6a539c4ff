/** The package brings no types; this is the part of it that is used. */
declare module 'svgdom' {
  import type { SvgWindow } from './window.ts';
  /** A window whose document is one empty `svg` element. */
  export function createSVGWindow(): SvgWindow;
}

/** What is made by another package is a window as far as this one asks for it. */
declare module '@svgdotjs/svg.js' {
  import type { SvgWindow } from './window.ts';

  function registerWindow(window: SvgWindow, document: SvgWindow['document']): void;
}
