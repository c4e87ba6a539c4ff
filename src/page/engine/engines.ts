import type { Asks, Look, LookRequest, Remaining } from './answers.ts';
import { engineScript, pressScript } from './scripts.ts';
import { Asking } from './worker.ts';

/** Answers at every key. */
const engine = new Asking(engineScript);
/** Works out what comes behind a picture of many openings, so that no key waits for it; most pieces never start it. */
const behind = new Asking(engineScript);
/** Makes what comes out; also asked for backs, whose words are measured, and for jobs with letters to cut, which need outlines. */
export const press = new Asking(pressScript);

export async function look(request: LookRequest): Promise<Look> {
  if (request.view === 'back') return press.ask('look', request);
  const found = await engine.ask('look', request);
  return found.needsOutlines === true ? press.ask('look', request) : found;
}

/** What a look left out. */
export const rest = async (request: LookRequest): Promise<Remaining> =>
  (await behind.ask('rest', request)) ?? (await press.ask('rest', request)) ?? { problems: [] };

export const shapes = (): Promise<Asks['shapes']['answer']> => engine.ask('shapes', {});

export const shopProblems = (request: Asks['shop']['request']): Promise<Asks['shop']['answer']> =>
  engine.ask('shop', request);
