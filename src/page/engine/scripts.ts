import { bytesOfBase64 } from '../../fonts/base64.ts';

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? '';

/** What the file carries, by the id of its element. */
export const carried = (id: 'templates' | 'pieces' | 'shop' | 'served'): unknown => JSON.parse(textOf(id) || 'null');

export const engineScript = async (): Promise<Blob> => new Blob([textOf('engine')], { type: 'text/javascript' });

/** The large worker's script is kept deflated. */
export async function pressScript(): Promise<Blob> {
  const bytes = new Uint8Array(bytesOfBase64(textOf('press').trim()));
  const opened = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Blob([await new Response(opened).arrayBuffer()], { type: 'text/javascript' });
}
