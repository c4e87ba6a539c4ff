import { existsSync } from 'node:fs';
import { join, normalize } from 'node:path';

/** What a page leads to, checked against what is there. */
export interface Around {
  /** The folder of the whole. */
  readonly top: string;
  readonly pages: ReadonlyMap<string, string>;
  readonly pictures: ReadonlySet<string>;
  /** Names of the files that lie where the page's commands were typed, once they all were. */
  readonly made: ReadonlySet<string>;
}

const FOLDER = 'examples/guide';

/** As the places that show Markdown make it of a heading. */
export const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}\s_-]/gu, '')
    .replaceAll(/\s/g, '-');

const withoutFences = (text: string): string => text.replaceAll(/^```[\s\S]*?^```$/gm, '');

export const headingsOf = (text: string): readonly string[] =>
  [...withoutFences(text).matchAll(/^#+ (.+)$/gm)].map((match) => match[1]!);

/** Links that lead nowhere, files in running words that are not there, and pictures without words for who cannot see them. */
export function faultsOf(page: string, text: string, around: Around): readonly string[] {
  const words = withoutFences(text);
  const faults: string[] = [];
  for (const [, alt, picture, target] of words.matchAll(/!\[([^\]]*)\]\(([^)]+)\)|\[[^\]]*\]\(([^)]+)\)/g)) {
    if (picture !== undefined) {
      if (alt === '') faults.push(`${page}: ${picture} has no words for who cannot see it`);
      const name = picture.replace(/^pictures\//, '');
      const isThere = picture.startsWith('../')
        ? existsSync(join(around.top, FOLDER, picture))
        : around.pictures.has(name);
      if (!isThere) faults.push(`${page}: there is no picture ${picture}`);
    } else if (!leads(page, target!, around)) faults.push(`${page}: the link to ${target} leads nowhere`);
  }
  for (const [, name] of words.matchAll(/`([^`\s]+\.(?:pdf|svg|png|dxf|plt|yaml|json|html|csv|mts|ts|md))`/g)) {
    const isThere = around.made.has(name!) || (name!.includes('/') && existsSync(join(around.top, name!)));
    if (!isThere) faults.push(`${page}: there is no file ${name}`);
  }
  return faults;
}

function leads(page: string, target: string, { top, pages }: Around): boolean {
  const [file = '', anchor] = target.split('#');
  if (/^[a-z]+:/.test(target)) return false;
  const other = file === '' ? page : normalize(file);
  const text = pages.get(other);
  if (text === undefined) return anchor === undefined && existsSync(join(top, FOLDER, file));
  return anchor === undefined || headingsOf(text).some((heading) => anchorOf(heading) === anchor);
}
