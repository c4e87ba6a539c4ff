/** The package brings no types; this is the part of it that is used. */
declare module 'svgdom' {
  export interface SvgDocument {
    readonly documentElement: { readonly outerHTML: string };
  }
  /** A window whose document is one empty `svg` element. */
  export function createSVGWindow(): { readonly document: SvgDocument };
}
