import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fontkit from '@pdf-lib/fontkit';
import pako from 'pako';
import { BETWEEN_OUTLINES, type EmbeddedFont, type Face } from '../fonts/model.ts';
import { subsetFace } from '../fonts/subset.ts';
import { SOURCES, type Source } from './font-set.ts';

/**
 * Makes src/fonts/prepared/: everything about the fonts that a run would otherwise work out from their files. Each
 * module is one JSON text to be parsed (faster to load than an object literal), its binaries in base64:
 * tables.ts to measure with, files.ts to embed, outlines.ts, and full.ts, the whole fonts for rare characters.
 * The same inputs give the same bytes: no clock, and a deflate written in JavaScript.
 */
const HERE = dirname(fileURLToPath(import.meta.url));
export const PREPARED = join(HERE, '../fonts/prepared');

export const MODULES = ['tables.ts', 'files.ts', 'outlines.ts', 'full.ts'] as const;
const STAMP = 'inputs.txt';

const require = createRequire(import.meta.url);
const fullBytes = (source: Source): Buffer => readFileSync(require.resolve(source.file));
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

/** Writes the modules into `outDir`. Says whether there was anything to do: nothing where the inputs are the same. */
export async function prepareFonts(outDir: string): Promise<boolean> {
  const stamp = join(outDir, STAMP);
  const wanted = inputs();
  if (wanted === readIfThere(stamp) && MODULES.every((file) => existsSync(join(outDir, file)))) return false;
  const modules = await preparedModules();
  mkdirSync(outDir, { recursive: true });
  rmSync(stamp, { force: true });
  for (const file of MODULES) replaceFile(join(outDir, file), modules[file]);
  replaceFile(stamp, wanted);
  return true;
}

/** At no time half written, as another process may be reading it. */
function replaceFile(file: string, text: string): void {
  const unfinished = `${file}.${process.pid}`;
  writeFileSync(unfinished, text);
  renameSync(unfinished, file);
}

export async function preparedModules(): Promise<Record<(typeof MODULES)[number], string>> {
  const faces: Face[] = [];
  const everything = new Set<number>();
  for (const source of SOURCES) {
    const font = fontkit.create(fullBytes(source));
    for (const codePoint of font.characterSet) if (meaningful(codePoint)) everything.add(codePoint);
    faces.push(await subsetFace(font, source, source.ranges.flatMap(counted)));
  }
  return {
    'tables.ts': moduleText([
      ['tables', 'readonly FaceTable[]', faces.map((face) => face.table)],
      ['everything', 'readonly (readonly [number, number])[]', runsOf([...everything])],
    ]),
    'files.ts': moduleText([['files', 'readonly EmbeddedFile[]', faces.map((face) => inBase64(face.embedded))]]),
    'outlines.ts': moduleText([
      [
        'outlines',
        'Readonly<Record<FontId, string>>',
        Object.fromEntries(faces.map((face) => [face.table.id, face.outlines.join(BETWEEN_OUTLINES)])),
      ],
    ]),
    'full.ts': moduleText([
      [
        'full',
        'readonly FullFont[]',
        SOURCES.map(({ id, weight, name, ...source }) => ({
          name: { id: `rare-${id}`, weight, name },
          file: base64(pako.deflate(fullBytes({ id, weight, name, ...source }))),
        })),
      ],
    ]),
  };
}

const counted = ([first, last]: readonly [number, number]): number[] =>
  Array.from({ length: last - first + 1 }, (_, i) => first + i);

/**
 * A font may give surrogates, private and non-characters (Unicode Standard, chapter 23) a shape, but they mean nothing
 * outside it. By number, as a property's list grows with the version of Unicode that runs this.
 */
const meaningful = (codePoint: number): boolean =>
  (codePoint < 0xd800 || codePoint > 0xf8ff) &&
  (codePoint < 0xfdd0 || codePoint > 0xfdef) &&
  (codePoint & 0xfffe) !== 0xfffe &&
  codePoint < 0xf0000;

/** First and last of each unbroken row of numbers. */
function runsOf(numbers: readonly number[]): [number, number][] {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs;
}

const inBase64 = (font: EmbeddedFont) => ({
  ...font,
  fontFile: base64(font.fontFile),
  toUnicode: base64(font.toUnicode),
});

function moduleText(constants: readonly (readonly [name: string, type: string, value: unknown])[]): string {
  const types = constants.flatMap(([, type]) => type.match(/\b(?:FaceTable|FontId|EmbeddedFile|FullFont)\b/g) ?? []);
  const lines = constants.map(
    ([name, type, value]) => `export const ${name}: ${type} = JSON.parse(${JSON.stringify(JSON.stringify(value))});\n`,
  );
  return [
    '// Made by src/dev/prepare-fonts.ts; not to be edited.\n',
    `import type { ${[...new Set(types)].sort().join(', ')} } from '../model.ts';\n\n`,
    ...lines,
  ].join('');
}

/** Hash of all that the output depends on: the fonts, and the programs that cut them down. */
function inputs(): string {
  const hash = createHash('sha256');
  for (const source of SOURCES) hash.update(fullBytes(source));
  for (const file of ['prepare-fonts.ts', 'font-set.ts', '../fonts/subset.ts', '../fonts/model.ts']) {
    hash.update(readFileSync(join(HERE, file)));
  }
  for (const name of ['@pdf-lib/fontkit', 'pako']) {
    hash.update(readFileSync(require.resolve(`${name}/package.json`)));
  }
  return `${hash.digest('hex')}\n`;
}

function readIfThere(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const made = await prepareFonts(PREPARED);
  process.stdout.write(made ? `fonts prepared in ${PREPARED}\n` : 'fonts are up to date\n');
}
