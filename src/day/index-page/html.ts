/** A piece of HTML: what is put into it is escaped, unless it is such a piece itself. */
export interface Html {
  readonly html: string;
}

type Part = Html | string | number | readonly Html[];

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

const escaped = (text: string): string => text.replace(/[&<>"']/gu, (sign) => SIGNS[sign]!);

function shown(part: Part): string {
  if (typeof part === 'string' || typeof part === 'number') return escaped(String(part));
  return 'html' in part ? part.html : part.map(({ html }) => html).join('');
}

export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return { html: texts.map((text, i) => text + (i < parts.length ? shown(parts[i]!) : '')).join('') };
}

export const NOTHING: Html = { html: '' };

/** Where there is something to say. */
export const where = <T>(value: T | undefined, say: (value: T) => Html): Html =>
  value === undefined ? NOTHING : say(value);

/** A relative way as an address: every part of it by itself. */
export const address = (way: string): string => way.split('/').map(encodeURIComponent).join('/');

/** A picture in an address. */
export const pictureAddress = (svg: string): string =>
  `data:image/svg+xml,${svg.replace(/[%#"<>\s]/gu, (sign) => (sign === ' ' ? ' ' : encodeURIComponent(sign)))}`;
