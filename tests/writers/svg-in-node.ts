import '../svg-window.ts';
import { loadSvg } from '../../src/writers/svg/load.ts';

export const { writePageSvg, writeSvg } = await loadSvg();
