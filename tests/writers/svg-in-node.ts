import '../svg-window.ts';
import { loadSvg } from '../../src/writers/load-svg.ts';

export const { writePageSvg, writeSvg } = await loadSvg();
