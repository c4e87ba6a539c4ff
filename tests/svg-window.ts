/** As `src/node.ts` does it, for tests that use a part of the library alone. */
import { buildSvgIn } from '../src/writers/svg/window.ts';

buildSvgIn(async () => (await import('svgdom')).createSVGWindow());
