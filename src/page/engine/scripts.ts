import { bytesOfBase64 } from '../../fonts/base64.ts';

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? '';

/** What the file carries, by the id of its element. */
export const carried = (id: 'templates' | 'pieces' | 'shop' | 'served'): unknown => JSON.parse(textOf(id) || 'null');

export const engineScript = async (): Promise<Blob> => new Blob([textOf('engine')], { type: 'text/javascript' });

/** What the file carries deflated. */
async function inflated(id: 'press' | 'guide', type: string): Promise<Blob> {
  const bytes = new Uint8Array(bytesOfBase64(textOf(id).trim()));
  const opened = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Blob([await new Response(opened).arrayBuffer()], { type });
}

/** The large worker's script. */
export const pressScript = (): Promise<Blob> => inflated('press', 'text/javascript');

/** The guide, a file by itself. */
export const guideFile = (): Promise<Blob> => inflated('guide', 'text/html');
