import { readFileSync } from 'node:fs';
import { join, normalize } from 'node:path';
import { Marked } from 'marked';
import { GUIDE_PAGES } from '../../cli/guide-pages.ts';
import { anchorOf } from './links.ts';

const FOLDER = 'examples/guide';

/** Where a page, or a heading of it, is found in the one file. */
const idOf = (page: string, heading?: string): string =>
  heading === undefined ? page : `${page}--${anchorOf(heading)}`;

/** A picture in the file itself. */
function inline(top: string, page: string, picture: string): string {
  const file = normalize(join(top, FOLDER, picture));
  const bytes = readFileSync(file);
  if (file.endsWith('.svg')) return `data:image/svg+xml;base64,${bytes.toString('base64')}`;
  if (file.endsWith('.png')) return `data:image/png;base64,${bytes.toString('base64')}`;
  throw new Error(`${page}: ${picture} is neither SVG nor PNG`);
}

/** A page as a chapter: its links stay in the file, where they lead to another page; elsewhere there is nothing to lead to. */
function chapter(top: string, page: string): string {
  const text = readFileSync(join(top, FOLDER, `${page}.md`), 'utf8').replaceAll(/<!--[\s\S]*?-->\n?/g, '');
  const marked = new Marked({
    renderer: {
      heading({ tokens, depth, text: words }) {
        const id = depth === 1 ? idOf(page) : idOf(page, words);
        return `<h${depth} id="${id}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
      },
      link({ href, tokens }) {
        const words = this.parser.parseInline(tokens);
        const [file = '', anchor] = href.split('#');
        const other = file === '' ? page : GUIDE_PAGES.find(({ name }) => `${name}.md` === file)?.name;
        if (other === undefined) return `${words} (<code>${normalize(join(FOLDER, file))}</code>)`;
        return `<a href="#${anchor === undefined ? other : `${other}--${anchor}`}">${words}</a>`;
      },
      image({ href, text: words }) {
        return `<img src="${inline(top, page, href)}" alt="${words.replaceAll('"', '&quot;')}">`;
      },
    },
  });
  return `<section>\n${marked.parse(text, { async: false })}</section>\n`;
}

/** Prints on white in black, a chapter on a new page; follows the reader's choice of light or dark on the screen. */
const STYLE = `
:root{color-scheme:light dark}
body{font:17px/1.5 system-ui,sans-serif;max-width:46rem;margin:0 auto;padding:1rem}
h1{font-size:1.8rem;line-height:1.2;margin:3rem 0 1rem;border-top:2px solid;padding-top:1rem}
h2{font-size:1.25rem;margin:2rem 0 .5rem}
pre,code{font-family:ui-monospace,monospace;font-size:.86em}
pre{border:1px solid #8886;padding:.6rem .8rem;overflow-x:auto;line-height:1.4}
table{border-collapse:collapse;margin:1rem 0}
th,td{border:1px solid #8886;padding:.25rem .6rem;text-align:left;vertical-align:top}
img{max-width:100%;height:auto;background:#fff;display:block;margin:1rem 0}
nav ol{columns:2;padding-left:1.4rem}
@media print{
  body{font-size:10.5pt;max-width:none;padding:0}
  section{break-before:page}
  h1{border:0;margin-top:0}
  h2,h3{break-after:avoid}
  pre{white-space:pre-wrap;overflow-wrap:anywhere}
  img,tr{break-inside:avoid}
  img{max-height:18cm;width:auto}
}
`;

/** The guide as one file: no script, nothing to be fetched. */
export function guideHtml(top: string): string {
  const list = GUIDE_PAGES.map(({ name, title }) => `<li><a href="#${name}">${title}</a></li>`).join('\n');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Matwright: the guide</title>
<style>${STYLE}</style>
</head>
<body>
<nav>
<ol>
${list}
</ol>
</nav>
${GUIDE_PAGES.map(({ name }) => chapter(top, name)).join('\n')}</body>
</html>
`;
}
