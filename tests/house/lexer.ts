/** Words after which a slash opens a regular expression. */
const BEFORE_REGEX =
  /(?:^|[(,=:[!&|?{};+\-*%<>~^\n]|\b(?:return|typeof|case|in|of|do|else|void|delete|throw|new|await))\s*$/;

const blank = (text: string): string => text.replace(/[^\n]/g, ' ');

/** Index just past the regular expression that opens at `at`. */
function endOfRegex(text: string, at: number): number {
  let inClass = false;
  for (let i = at + 1; i < text.length; i++) {
    const c = text[i];
    if (c === '\n') return i;
    if (c === '\\') i++;
    else if (c === '[') inClass = true;
    else if (c === ']') inClass = false;
    else if (c === '/' && !inClass) return i + 1;
  }
  return text.length;
}

/** Index of the quote that closes the string whose first character stands at `at`. */
function endOfString(text: string, at: number, quote: string): number {
  for (let i = at; i < text.length; i++) {
    if (text[i] === '\\') i++;
    else if (text[i] === quote || (text[i] === '\n' && quote !== '`')) return i;
  }
  return text.length;
}

/**
 * The code alone: comments, the insides of strings and regular expressions become spaces, so that every index and
 * line stays where it was. What a template puts in between `${` and `}` is code and is kept.
 */
export function codeOnly(text: string): string {
  let out = '';
  /** For each open template: how many braces are open inside its `${`. */
  const templates: number[] = [];
  let i = 0;

  /** From the template's text at `i` up to its end or its next `${`. */
  const template = (): void => {
    const start = i;
    while (i < text.length) {
      if (text[i] === '\\') i += 2;
      else if (text[i] === '`') break;
      else if (text.startsWith('${', i)) break;
      else i++;
    }
    out += blank(text.slice(start, i));
    if (text[i] === '`') {
      out += '`';
      i++;
    } else if (i < text.length) {
      out += '${';
      i += 2;
      templates.push(0);
    }
  };

  while (i < text.length) {
    const c = text[i]!;
    if (text.startsWith('//', i) || text.startsWith('/*', i)) {
      const line = text[i + 1] === '/';
      const found = text.indexOf(line ? '\n' : '*/', i + 2);
      const end = found < 0 ? text.length : line ? found : found + 2;
      out += blank(text.slice(i, end));
      i = end;
    } else if (c === "'" || c === '"') {
      const end = endOfString(text, i + 1, c);
      out += c + blank(text.slice(i + 1, end)) + (text[end] ?? '');
      i = end + 1;
    } else if (c === '`') {
      out += c;
      i++;
      template();
    } else if (c === '/' && BEFORE_REGEX.test(out.slice(-80))) {
      const end = endOfRegex(text, i);
      out += `/${blank(text.slice(i + 1, end))}`;
      i = end;
    } else {
      const open = templates.length - 1;
      if (open >= 0 && c === '{') templates[open]!++;
      if (open >= 0 && c === '}' && templates[open]!-- === 0) {
        templates.pop();
        out += c;
        i++;
        template();
      } else {
        out += c;
        i++;
      }
    }
  }
  return out;
}

export interface Import {
  /** As it is written; undefined where it is not a plain string. */
  readonly specifier: string | undefined;
  readonly index: number;
  readonly dynamic: boolean;
}

const STATIC = /\b(?:import|export)\b[^'"`;()=]*?\bfrom\s*(['"])( *)\1/g;
const BARE = /\bimport\s*(['"])( *)\1/g;
const CALLED = /\b(?:import|require)\s*\(\s*(?:(['"])( *)\1)?/g;

/** Every module that the file names, types included. */
export function importsOf(text: string): Import[] {
  const code = codeOnly(text);
  const read = (match: RegExpExecArray, dynamic: boolean): Import => {
    const inside = match[2] ?? '';
    const end = match.index + match[0].length - 1;
    return {
      specifier: match[1] === undefined ? undefined : text.slice(end - inside.length, end),
      index: match.index,
      dynamic,
    };
  };
  return [
    ...[...code.matchAll(STATIC), ...code.matchAll(BARE)].map((match) => read(match, false)),
    ...[...code.matchAll(CALLED)].map((match) => read(match, true)),
  ];
}
