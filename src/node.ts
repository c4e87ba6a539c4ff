/** The library as Node has it: the same, with a DOM to build SVG in. */
import { buildSvgIn } from './writers/svg/window.ts';

export * from './index.ts';

buildSvgIn(async () => (await import('svgdom')).createSVGWindow());
