/** Sizes in another unit come out by so much (15/64 in for 6 mm), and no rule on the bench reads as fine, mm. */
const PLAY = 0.1;
const ROUNDING = 1e-9;

/** Whether a length misses what a rule of thumb asks for by so much that a warning is worth reading. What cannot be cut has bounds of its own. */
export const fallsShort = (length: number, least: number): boolean => least - length > PLAY + ROUNDING;
