import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { rolldown } from 'rolldown';
import { elementJson } from '../cli/page-file.ts';
import { summaryOf } from '../cli/templates.ts';
import type { Files } from './bundle.ts';
import { guideHtml } from './guide/html.ts';
import { pageHtml } from './page-html.ts';
import { woff } from './woff.ts';

/** The page in one file: it asks for nothing else, and its policy forbids that it could. */
export async function bundlePage(top: string): Promise<Files> {
  const source = join(top, 'src/page');
  const [script, engine, press] = await Promise.all([
    classic(top, join(source, 'main.ts')),
    classic(top, join(source, 'engine/engine.ts'), NO_LETTERS),
    classic(top, join(source, 'engine/press.ts')),
  ]);
  const inScript = unclosed(script);
  const style = styles(top);
  const html = pageHtml({
    policy: policy(inScript, style),
    style,
    templates: elementJson(templates(top)),
    engine: unclosed(engine),
    press: deflateRawSync(press, { level: 9 }).toString('base64'),
    guide: deflateRawSync(guideHtml(top), { level: 9 }).toString('base64'),
    script: inScript,
  });
  return { 'matwright.html': html };
}

/** Nothing is fetched, sent, framed or loaded from anywhere; scripts and styles are those of the file, by their hashes. */
function policy(script: string, style: string): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `script-src ${hash(script)}`,
    `style-src ${hash(style)}`,
    'worker-src blob:',
    'font-src data:',
    'img-src blob: data:',
    "connect-src 'none'",
    "form-action 'none'",
    "base-uri 'none'",
  ].join('; ');
}

const STYLES = ['colours', 'base', 'bench', 'face', 'form', 'places', 'cutter', 'shop', 'day', 'print'];

/** The typeface of the sheets, whole, so that what is printed from here is as wide as it was measured. */
const FACES = [
  { weight: 400, file: '400Regular/IBMPlexSans_400Regular.ttf' },
  { weight: 600, file: '600SemiBold/IBMPlexSans_600SemiBold.ttf' },
];

function styles(top: string): string {
  const fonts = join(top, 'node_modules/@expo-google-fonts/ibm-plex-sans');
  const faces = FACES.map(({ weight, file }) => {
    const data = woff(readFileSync(join(fonts, file))).toString('base64');
    return `@font-face{font-family:"Sheet";font-weight:${weight};src:url(data:font/woff;base64,${data}) format("woff")}`;
  });
  return [...STYLES.map((name) => readFileSync(join(top, `src/page/style/${name}.css`), 'utf8')), ...faces].join('\n');
}

function templates(top: string) {
  const folder = join(top, 'templates');
  const names = readdirSync(folder).filter((file) => file.endsWith('.yaml') && file !== 'shop.yaml');
  return names.sort().map((file) => {
    const text = readFileSync(join(folder, file), 'utf8');
    return { name: file.replace(/\.yaml$/u, ''), summary: summaryOf(text), text };
  });
}

/** A script's text that cannot end the element that it stands in. */
const unclosed = (script: string): string => script.replace(/<(?=\/script|!--)/giu, '\\x3c');

/** What the small worker never asks for: letters are measured there, not drawn, and none of them is rare. */
const NO_LETTERS = ['./prepared/outlines.ts', './prepared/files.ts', './rare.ts'];

/** One classic script, with whatever it loads later in it: a worker of a page that is a file can be no module. */
async function classic(top: string, input: string, without: readonly string[] = []): Promise<string> {
  const never = join(top, 'src/dev/never-called.ts');
  const noFiles = join(top, 'src/dev/no-files.ts');
  const bundle = await rolldown({
    input,
    cwd: top,
    platform: 'browser',
    resolve: {
      alias: {
        ...Object.fromEntries(without.map((name) => [name, never])),
        fontkit: never,
        'image-size': never,
        sax: never,
        path: noFiles,
        'node:path': noFiles,
        'node:url': noFiles,
        yaml: join(top, 'node_modules/yaml/browser/dist/index.js'),
      },
    },
    treeshake: {
      moduleSideEffects: [
        { test: /[\\/]node_modules[\\/](?:pdf-lib|@pdf-lib[\\/]standard-fonts|yaml)[\\/]/, sideEffects: false },
      ],
    },
    transform: { define: { 'import.meta.url': '""' } },
    checks: { eval: false },
    logLevel: 'warn',
  });
  try {
    const { output } = await bundle.generate({
      format: 'iife',
      codeSplitting: false,
      minify: true,
      comments: false,
      charset: 'ascii',
    });
    return output[0].code;
  } finally {
    await bundle.close();
  }
}
