import { open } from './piece.ts';
import { type Place, place } from './place.ts';

const AT_WORK: readonly Place[] = ['describe', 'out', 'shop'];

/** Whether what is open is to be seen and changed in the place where one is. */
export const worksHere = (): boolean => open.value !== undefined && AT_WORK.includes(place.value);
