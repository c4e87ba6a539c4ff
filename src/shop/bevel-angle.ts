import { number } from '../read/fields/fields.ts';

/** Degrees; the usual bevel (common practice, no source). */
export const BEVEL = 45;

/** Flatter bevels are none that a head cuts; 90 is square. */
const BEVELS = { least: 20, most: 90 };

export const BEVEL_EXPECTED = `an angle from ${BEVELS.least} to ${BEVELS.most} degrees`;

export const bevelAngle = () =>
  number(
    'Degrees between the bevel and the face of the board; 90 is square',
    [45, 60, 90],
    BEVELS.least,
    BEVELS.most,
    BEVEL_EXPECTED,
  );
