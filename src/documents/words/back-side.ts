import type { Stroke } from '../../bench/model.ts';
import { mirroredSide, type Side } from '../../geometry/sides.ts';

/** The side as it lies before the one who cuts: left and right change places on the back. */
export const backSide = ({ side }: Pick<Stroke, 'side'>): Side => mirroredSide(side);

/** Said with every side on whatever lies on the bench: pattern, ticket and list of the run name them alike. */
export const BACK_WORDS = 'seen from the BACK';

/** The side of a stroke as it lies on a sheet of either view. */
export const sideWords = (stroke: Pick<Stroke, 'side'>, view: 'face' | 'back'): string =>
  view === 'back' ? `${backSide(stroke)}, ${BACK_WORDS}` : `${stroke.side}, seen from the FACE`;
