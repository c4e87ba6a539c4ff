/**
 * Stands in the program for what packages load and the program never calls: commander would start other programs;
 * svgdom would measure text by font files and pictures by theirs, and read markup, but text goes out as outlines, pictures
 * with their sizes, and a tree is only ever built.
 */
const leftOut = (): never => {
  throw new Error('this part of a package is left out of the program');
};

export default leftOut;
export { leftOut as openSync, leftOut as spawn };
