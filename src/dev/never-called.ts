/**
 * Stands in the program for what packages load and the program never calls: commander would start other programs, and
 * svgdom would measure text by font files and pictures by theirs, but text goes out as outlines and pictures with sizes.
 */
const leftOut = (): never => {
  throw new Error('this part of a package is left out of the program');
};

export default leftOut;
export { leftOut as openSync, leftOut as spawn };
