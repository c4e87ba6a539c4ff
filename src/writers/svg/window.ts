/** A window with a document, as far as the SVG library asks for one: a browser's own, or what a package makes. */
export interface SvgWindow {
  readonly document: { createElementNS(namespace: string, name: string): unknown };
}

let make: (() => Promise<SvgWindow>) | undefined;
let made: Promise<SvgWindow> | undefined;

/**
 * Where a platform has no DOM of its own, trees of SVG are built in the window that `maker` gives; it is asked once, and
 * not before something is written as SVG. A page in a browser needs none.
 */
export function buildSvgIn(maker: () => Promise<SvgWindow>): void {
  make = maker;
  made = undefined;
}

/** The window to build in, where one was handed in. */
export function svgWindow(): Promise<SvgWindow> | undefined {
  made ??= make?.();
  return made;
}
