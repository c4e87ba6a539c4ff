import { LEAST_FREED } from '../../bench/uncut.ts';
import { printDecimal } from '../../units/print.ts';

/**
 * How the corners of a reverse bevel are freed that was cut from the back, `most` being what stays uncut there at an end of
 * a stroke. A longer stroke would overcut the face. One sentence a line; nothing where there is nothing to free.
 */
export function reverseCornerWords(most: number): readonly string[] {
  if (most < LEAST_FREED) return [];
  // What is left is never said to be less than it is.
  const length = `${printDecimal(Math.ceil(most * 10 - 1e-6) / 10, 'mm', 1).text} mm`;
  return [
    `Reverse bevel: up to ${length} at both ends of every stroke stay uncut at the back, and would tear the corner.`,
    'Free the corners from the back before the fallout is pushed out: the knife in the cut already made, leaning as it leans, at full depth where the stroke ends, running out to nothing at the corner on the back.',
    'Never upright: it would come out through the face.',
  ];
}

/** The same for a line of small type on the pattern itself. */
export const REVERSE_CORNERS = 'free its corners from the back first';
