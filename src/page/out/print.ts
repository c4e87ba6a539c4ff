import { h, render } from 'preact';
import type { Laid } from '../engine/answers.ts';
import { pageElement } from '../picture/pages.ts';
import { pieceUrls } from '../picture/urls.ts';

/** Rules of the last print, taken out before the next. */
let rules = 0;

const styles = (): CSSStyleSheet => document.styleSheets[0]!;

/**
 * Prints pages at their own size. Every paper has a named page of the size that the printer must have, without margins:
 * the sheets keep their own. The rules are added by script, which the policy of the page allows.
 */
export async function printPages({ documents, pictures }: Laid): Promise<void> {
  const pages = documents.flatMap(({ name, document }) =>
    document.pages.map((page, i) => ({ document, page, key: `print-${name}-${i}` })),
  );
  const sheet = styles();
  for (; rules > 0; rules--) sheet.deleteRule(sheet.cssRules.length - 1);
  const sizes = new Map<string, string>();
  for (const { page } of pages) {
    const { width, height } = page.paper;
    const size = `${width}mm ${height}mm`;
    if (sizes.has(size)) continue;
    const name = `paper-${sizes.size + 1}`;
    sizes.set(size, name);
    add(`@page ${name} { size: ${size}; margin: 0 }`);
    add(`.print .${name} { page: ${name}; width: ${width}mm; height: ${height}mm }`);
  }
  const urls = pieceUrls(
    Object.fromEntries(
      Object.entries(pictures).map(([name, bytes]) => [
        name,
        new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }),
      ]),
    ),
  );
  const root = document.getElementById('print')!;
  render(
    h(
      'div',
      {},
      pages.map(({ document: own, page, key }) =>
        h(
          'div',
          { key, class: sizes.get(`${page.paper.width}mm ${page.paper.height}mm`)! },
          pageElement(own, page, key, urls),
        ),
      ),
    ),
    root,
  );
  await document.fonts.ready;
  globalThis.print();

  function add(rule: string): void {
    sheet.insertRule(rule, sheet.cssRules.length);
    rules += 1;
  }
}
