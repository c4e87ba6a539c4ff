import type { OutputFile } from '../../outputs/write.ts';
import { base64 } from '../../writers/svg/base64.ts';
import { carried } from '../engine/scripts.ts';

/** The folder that this page was served with. */
export interface ServedFolder {
  /** Of addresses, with the token: `/…/`. */
  readonly base: string;
  /** As it is called. */
  readonly folder: string;
}

export const served = (): ServedFolder | undefined => (carried('served') as ServedFolder | null) ?? undefined;

/** A file of the folder, with what its bytes are known by: who saves over them names it. */
export interface Held {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly mark: string;
}

/** What lies in the folder is no longer what was read. */
export class ChangedThere extends Error {}
/** What was read there is there no longer. */
export class GoneThere extends Error {}
/** Nobody answers any more. */
class NobodyThere extends Error {}

async function ask(path: string, name: string | undefined, init: RequestInit = {}): Promise<Response> {
  const own = served();
  if (own === undefined) throw new NobodyThere('this page was not served');
  const address = `${own.base}${path}${name === undefined ? '' : `?name=${encodeURIComponent(name)}`}`;
  let response: Response;
  try {
    response = await fetch(address, { ...init, cache: 'no-store' });
  } catch {
    throw new NobodyThere('the program that served this page does not answer any more');
  }
  if (response.status === 409) throw new ChangedThere(await response.text());
  if (response.status === 404) throw new GoneThere(await response.text());
  if (!response.ok) throw new Error(await response.text());
  return response;
}

/** Names of jobs, shops and pictures, with `/` between folders. */
export async function servedNames(): Promise<readonly string[]> {
  const { files } = (await (await ask('files', undefined)).json()) as { readonly files: readonly string[] };
  return files;
}

export async function servedFile(name: string): Promise<Held> {
  const response = await ask('file', name);
  const mark = /^"([0-9a-f]{64})"$/u.exec(response.headers.get('etag') ?? '')?.[1] ?? '';
  return { name, bytes: new Uint8Array(await response.arrayBuffer()), mark };
}

/** Saves a text over the one of that mark, or where there is none yet; gives its new mark, once it reads back the same. */
export async function saveServed(name: string, text: string, over: string | undefined): Promise<string> {
  const how = over === undefined ? { 'if-none-match': '*' } : { 'if-match': `"${over}"` };
  const response = await ask('file', name, { method: 'PUT', headers: how, body: text });
  const { mark } = (await response.json()) as { readonly mark: string };
  const back = await servedFile(name);
  if (back.mark !== mark || new TextDecoder().decode(back.bytes) !== text)
    throw new Error('what was written reads back otherwise');
  return mark;
}

/** Writes outputs into a folder, all or none. */
export async function saveServedOutputs(into: string, files: readonly OutputFile[]): Promise<void> {
  const body = JSON.stringify(files.map(({ name, bytes }) => ({ name, base64: base64(bytes) })));
  await ask('outputs', into, { method: 'POST', body });
}
