import { SIGNATURE } from './png-head.ts';

export type Kind = 'jpeg' | 'png';

interface Words {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

export type Kinds =
  | { readonly ok: true; readonly value: Kind; readonly warning?: Words }
  | ({ readonly ok: false } & Words);

/** First bytes of what people take for a picture; a `.` is any byte. */
const OTHERS: readonly (readonly [start: string, name: string])[] = [
  ['GIF8', 'a GIF'],
  ['II*\0', 'a TIFF'],
  ['MM\0*', 'a TIFF'],
  ['RIFF....WEBP', 'a WebP picture'],
  ['....ftyphei', 'a HEIC picture'],
  ['....ftypmif', 'a HEIC picture'],
  ['....ftypavif', 'an AVIF picture'],
  ['....JXL ', 'a JPEG XL picture'],
  ['\xff\x0a', 'a JPEG XL picture'],
  ['....jP  ', 'a JPEG 2000 picture'],
  ['BM', 'a BMP picture'],
  ['8BPS', 'a file of layers'],
  ['%PDF', 'a PDF'],
  ['<svg', 'an SVG'],
  ['<?xml', 'an XML file'],
  ['<!DOC', 'a web page'],
  ['<html', 'a web page'],
];

const begins = (bytes: Uint8Array, start: string): boolean =>
  bytes.length >= start.length &&
  Array.from(start).every((character, i) => character === '.' || bytes[i] === character.charCodeAt(0));

/** By the first bytes; a name that says something else is worth a warning. */
export function kindOf(bytes: Uint8Array, name: string): Kinds {
  const hint = 'save it as JPEG or PNG';
  if (bytes.length === 0) return { ok: false, code: 'picture-empty', message: 'the picture’s file is empty', hint };
  const kind = SIGNATURE.every((byte, i) => bytes[i] === byte)
    ? 'png'
    : bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff
      ? 'jpeg'
      : undefined;
  if (kind === undefined) {
    const other = OTHERS.find(([start]) => begins(bytes, start))?.[1];
    const message = `the picture is ${other === undefined ? 'neither a JPEG nor a PNG' : `${other}; only JPEG and PNG are read`}`;
    return { ok: false, code: 'picture-kind', message, hint };
  }
  const ending = /\.([A-Za-z0-9]+)$/.exec(name)?.[1]?.toLowerCase();
  const own = kind === 'png' ? ['png'] : ['jpg', 'jpeg', 'jpe', 'jfif'];
  if (ending === undefined || own.includes(ending)) return { ok: true, value: kind };
  const warning = {
    code: 'picture-name',
    message: `the picture is a ${kind === 'png' ? 'PNG' : 'JPEG'}, though its name ends in .${ending}; it is read as what it is`,
    hint: `rename it to end in .${own[0]}`,
  };
  return { ok: true, value: kind, warning };
}
