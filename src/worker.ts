/** The library as a worker in a browser has it: the same, with a DOM to build SVG in, since it has none of its own. */
import { buildSvgIn } from './writers/svg/window.ts';

export * from './index.ts';

buildSvgIn(async () => (await import('svgdom')).createSVGWindow());
