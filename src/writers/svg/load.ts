import { svgWindow } from './window.ts';

/** The SVG writer, with a document to build its trees in. */
export async function loadSvg(): Promise<typeof import('./svg.ts')> {
  const [writer, window] = await Promise.all([import('./svg.ts'), svgWindow()]);
  if (window !== undefined) writer.buildIn(window);
  return writer;
}
