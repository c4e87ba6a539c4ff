/** The rules of the house, typed once. DEVELOPERS.md gives the reasons; the checkers beside this file give them teeth. */

/** Folders and files of `src/` from the lowest up: each imports only what stands above it here, and its own folder. */
export const ORDER: readonly string[] = [
  'problems',
  'units',
  'geometry',
  'fonts',
  'papers',
  'shapes',
  'drawing',
  'pictures',
  'text',
  'read',
  'shop',
  'job',
  'mat',
  'bench',
  'stock',
  'settle',
  'documents',
  'cutfiles',
  'calibrate',
  'paper',
  'writers',
  'outputs',
  'day',
  'index.ts',
  'node.ts',
  'worker.ts',
  'cli',
  'page',
  'dev',
];

/** Run by package scripts, or put into one file by the build; imported by nothing in `src/`. */
export const NEVER_IMPORTED: readonly string[] = ['dev', 'page'];

/** Packages that files whose path starts so may import; `node:` stands for all of Node's own modules. */
export const PACKAGES: readonly { readonly from: string; readonly allowed: readonly string[] }[] = [
  { from: 'src/read/', allowed: ['zod', 'yaml'] },
  { from: 'src/shop/', allowed: ['zod', 'yaml'] },
  { from: 'src/job/', allowed: ['zod', 'yaml'] },
  { from: 'src/calibrate/', allowed: ['zod'] },
  { from: 'src/stock/booking/plans-schema.ts', allowed: ['zod'] },
  { from: 'src/fonts/rare.ts', allowed: ['@pdf-lib/fontkit', 'pako'] },
  { from: 'src/fonts/subset.ts', allowed: ['@pdf-lib/fontkit', 'pako'] },
  { from: 'src/day/table/', allowed: ['papaparse'] },
  { from: 'src/writers/pdf', allowed: ['pdf-lib'] },
  { from: 'src/writers/svg', allowed: ['@svgdotjs/svg.js'] },
  { from: 'src/node.ts', allowed: ['svgdom'] },
  { from: 'src/worker.ts', allowed: ['svgdom'] },
  { from: 'src/writers/png', allowed: ['@resvg/resvg-wasm'] },
  { from: 'src/cli/', allowed: ['commander', '@clack/prompts', '@bomb.sh/tab', 'node:'] },
  { from: 'src/cli/day/find.ts', allowed: ['tinyglobby'] },
  { from: 'src/cli/day/threads.ts', allowed: ['piscina'] },
  { from: 'src/page/', allowed: ['preact', '@preact/signals'] },
  { from: 'src/page/out/', allowed: ['fflate'] },
  { from: 'src/page/engine/press.ts', allowed: ['svgdom'] },
  {
    from: 'src/dev/',
    allowed: [
      '@babel/parser',
      '@hyzyla/pdfium',
      '@pdf-lib/fontkit',
      '@resvg/resvg-wasm',
      'marked',
      'pako',
      'pngjs',
      'rolldown',
      'node:',
    ],
  },
];

/** What the top level holds besides dotfiles … */
export const TOP_LEVEL: readonly string[] = [
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'src',
  'tests',
  'golden',
  'shared',
  'examples',
];
/** … may hold as well … */
export const MAY_BE_THERE: readonly string[] = ['templates'];
/** … and what programs make there, which is never committed. */
export const MADE: readonly string[] = ['node_modules', 'dist', 'coverage'];

export const LONGEST_FILE = 300;
/** Longer files, each with the reason why it stays whole. */
export const LONG_FILES: Readonly<Record<string, string>> = {};

/** Names that say nothing about what a file holds. */
export const EMPTY_NAMES: readonly string[] = ['util', 'utils', 'helper', 'helpers', 'common', 'misc', 'stuff', 'lib'];

/** Code with these is unfinished, or switches a check off. */
export const UNWANTED: readonly { readonly pattern: RegExp; readonly why: string }[] = [
  { pattern: /\b(?:TODO|FIXME|XXX|HACK)\b/g, why: 'finish it, or file it' },
  { pattern: /@ts-(?:ignore|nocheck|expect-error)\b/g, why: 'give it a type' },
  { pattern: /\b(?:eslint-disable|prettier-ignore|istanbul ignore|c8 ignore|v8 ignore)\b/g, why: 'keep the check' },
];

export const UNWANTED_IN_CODE: typeof UNWANTED = [
  { pattern: /\bas any\b|:\s*any\b|<any>/g, why: 'give it a type' },
  { pattern: /\bas unknown as\b/g, why: 'two casts hide a wrong type' },
  { pattern: /\bdebugger\b/g, why: 'leave the debugger out' },
];

/** In tests: what makes a check run less, or prove less, than it seems to. */
export const UNWANTED_IN_TESTS: readonly { readonly pattern: RegExp; readonly why: string }[] = [
  { pattern: /\b(?:it|test|describe)\.(?:only|skip|todo|fails)\b/g, why: 'every test runs' },
  { pattern: /\b(?:xit|xtest|xdescribe|fit|fdescribe)\(/g, why: 'every test runs' },
  {
    pattern: /\.(?:skipIf|runIf)\(\s*!*\s*(?:true|false|\d+|''|\[\]|\{\}|undefined|null)\s*\)/g,
    why: 'a test runs or not by what is there',
  },
  { pattern: /\.(?:each|for)\(\s*\[\s*\]\s*\)/g, why: 'nothing is tried' },
  {
    pattern: /\b(?:it|test)\([^()]*,\s*(?:async\s*)?(?:\(\)\s*=>|function\s*\(\))\s*\{\s*\}/g,
    why: 'an empty test proves nothing',
  },
  { pattern: /\bexpect\(true\)/g, why: 'a check that cannot fail proves nothing' },
  { pattern: /\btoBeCloseTo\([^,()]+\)/g, why: 'the default allows 0.005: say the digits' },
];

/** Units are defined in `src/units/` alone. */
export const UNIT_NUMBERS: readonly RegExp[] = [/(?<![\w.])72\s*[/*]/g, /[/*]\s*72\b(?!\.)/g];

/** What they come to: any constant, or two multiplied or divided, that is one of these is one of these written otherwise. */
export const UNITS: readonly number[] = [25.4, 72 / 25.4, 25.4 / 72, 1 / 25.4];

/** What reads the world around the program; only `src/cli/` and `src/dev/` may. */
export const AMBIENT: readonly RegExp[] = [
  // Whatever is done with it, but as the name of a key.
  /(?<![\w.#$])process\b(?!\s*[:(])/g,
  /(?<![\w.#$])globalThis\b/g,
  /\}\s*=\s*(?:Math|Date|performance|crypto|console|Intl|navigator)\b/g,
  /\bDate\.now\b/g,
  /(?<![\w.])(?:new\s+)?Date\(\s*\)/g,
  /\bMath\.random\b/g,
  /\bperformance\s*\./g,
  /(?<![\w.])crypto\s*\./g,
  /(?<![\w.])console\s*\./g,
  /(?<![\w.])fetch\(/g,
  /\bset(?:Timeout|Interval)\(/g,
  /\btoLocale(?:\w*)\(/g,
  /\blocaleCompare\(/g,
  /(?<![\w.])Intl\s*\./g,
  /\bimport\.meta\b/g,
  /(?<![\w.])__(?:dirname|filename)\b/g,
];

/** What only a browser has; `src/page/` alone may use it. */
export const BROWSER: readonly RegExp[] = [
  /(?<![\w.])document\s*\.\s*(?:getElementById|createElement\b|querySelector|body|cookie|fonts)/g,
  /(?<![\w.])(?:navigator|localStorage|sessionStorage|indexedDB)\s*\./g,
  /\bnew\s+(?:Worker|BroadcastChannel)\(/g,
  /\brequestAnimationFrame\(/g,
];

/** What could carry something away from the page, or the page itself: it works by itself and stays where it is. */
export const LEAVES_THE_PAGE: readonly RegExp[] = [
  /(?<![\w.])fetch\(/g,
  /\b(?:XMLHttpRequest|WebSocket|EventSource|RTCPeerConnection|sendBeacon|importScripts)\b/g,
  /(?<![\w.])(?:window\s*\.\s*)?location\s*(?:=(?!=)|\.)/g,
  /\bwindow\s*\.\s*open\(/g,
  /\bserviceWorker\b/g,
  /\b(?:innerHTML|outerHTML|insertAdjacentHTML|dangerouslySetInnerHTML)\b/g,
];

/** Documents and sheets say what stands where; how lines break, and how far apart they run, is decided in `src/text/` alone. */
export const SETTING: readonly RegExp[] = [
  /\b(?:wrap|textWidth|textBox|metrics|fitSize)\(/g,
  /\b(?:LEADINGS|pitch\()/g,
  /\bleading\b/g,
  /\banchor\s*[:,][^{}]*\bturn\s*[:,]/g,
];
export const SET_ELSEWHERE: readonly string[] = ['src/documents/', 'src/paper/', 'src/outputs/'];
