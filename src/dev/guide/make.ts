import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { GUIDE_PAGES } from '../../cli/guide-pages.ts';
import { filled } from './fill.ts';
import { faultsOf, headingsOf } from './links.ts';
import { numberOf } from './numbers.ts';
import { pictures } from './pictures.ts';
import { tableOf } from './tables.ts';
import { openTerminal } from './terminal.ts';

export interface Guide {
  /** Pages and pictures by their paths below `examples/guide/`. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** What leads nowhere, or is not there. */
  readonly faults: readonly string[];
}

/** The whole guide made anew. `built` is the program's `cli.js`. */
export async function makeGuide(top: string, built: string): Promise<Guide> {
  const made = await pictures(top);
  const pages = new Map<string, string>();
  const beside = new Map<string, ReadonlySet<string>>();
  for (const { name } of GUIDE_PAGES) {
    const page = `${name}.md`;
    const text = await readFile(join(top, 'examples/guide', page), 'utf8');
    const terminal = await openTerminal(top, built);
    try {
      pages.set(page, await filled(page, text, { terminal, number: numberOf, table: tableOf }));
      beside.set(page, await terminal.names());
    } finally {
      await terminal.close();
    }
  }
  const faults = GUIDE_PAGES.flatMap(({ name, title }) => {
    const page = `${name}.md`;
    const text = pages.get(page)!;
    const around = { top, pages, pictures: new Set(made.keys()), made: beside.get(page)! };
    const own = headingsOf(text)[0] === title ? [] : [`${page}: its title is not ${title}`];
    return [...own, ...faultsOf(page, text, around)];
  });
  const all = [...pages.values()].join('\n');
  const idle = [...made.keys()].filter((name) => !all.includes(`(pictures/${name})`));
  const encoder = new TextEncoder();
  const files = new Map<string, Uint8Array>([
    ...[...pages].map(([name, text]) => [name, encoder.encode(text)] as const),
    ...[...made].map(([name, bytes]) => [`pictures/${name}`, bytes] as const),
  ]);
  return { files, faults: [...faults, ...idle.map((name) => `no page shows ${name}`)] };
}
