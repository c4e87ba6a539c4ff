/** Stands in for Node's paths in a worker, which has no files: svgdom says where its fonts would lie, and none is opened. */
const nowhere = (): string => '';

export { nowhere as dirname, nowhere as fileURLToPath, nowhere as join };
export default { join: nowhere };
