import { orientationOf } from './exif.ts';
import { type Head, type Orientation, Unreadable } from './model.ts';
import { saysSrgb } from './profile.ts';

/** PNG, third edition (W3C, 2025), 11.2.1. */
export interface PngHead extends Head {
  readonly depth: number;
  readonly colour: 0 | 2 | 3 | 4 | 6;
  readonly interlaced: boolean;
  readonly palette: Uint8Array;
  /** Opacity of palette entries, or the one grey or colour that is clear. */
  readonly clear: Uint8Array | undefined;
  /** The deflated pixels, as they lie in the file. */
  readonly data: readonly Uint8Array[];
}

export const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

const DEPTHS: Readonly<Record<PngHead['colour'], readonly number[]>> = {
  0: [1, 2, 4, 8, 16],
  2: [8, 16],
  3: [1, 2, 4, 8],
  4: [8, 16],
  6: [8, 16],
};

export const broken = (what: string): Unreadable =>
  new Unreadable('picture-broken', `the picture is broken: ${what}`, 'open it in a picture program and save it again');

export function readPngHead(bytes: Uint8Array): PngHead {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let head: Pick<PngHead, 'width' | 'height' | 'depth' | 'colour' | 'interlaced'> | undefined;
  let palette = new Uint8Array();
  let clear: Uint8Array | undefined;
  let orientation: Orientation = 1;
  let profile = false;
  const data: Uint8Array[] = [];
  let at = SIGNATURE.length;
  for (;;) {
    if (at + 12 > bytes.length) throw broken('it ends too soon');
    const length = view.getUint32(at);
    if (at + 12 + length > bytes.length) throw broken('it ends too soon');
    const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (crc(bytes.subarray(at + 4, at + 8 + length)) !== view.getUint32(at + 8 + length)) {
      throw broken(`the checksum of a part (${/^[A-Za-z]{4}$/.test(kind) ? kind : 'unknown'}) is wrong`);
    }
    at += 12 + length;
    if (head === undefined && kind !== 'IHDR') throw broken('it does not begin with its size');
    if (kind === 'IHDR') head = readSize(body);
    else if (kind === 'PLTE') palette = body.slice();
    else if (kind === 'tRNS') clear = body.slice();
    else if (kind === 'eXIf') orientation = orientationOf(body);
    else if (kind === 'iCCP') profile = !saysSrgb(body.subarray(0, 80));
    else if (kind === 'IDAT') data.push(body);
    else if (kind === 'IEND') break;
    else if (/^[A-Z]/.test(kind)) throw broken(`it has a part ${JSON.stringify(kind)} that is not known`);
  }
  if (data.length === 0) throw broken('it has no pixels');
  if (head!.colour === 3 && palette.length === 0) throw broken('its palette is missing');
  return { ...head!, palette, clear, orientation, data, notes: profile ? ['profile'] : [] };
}

function readSize(body: Uint8Array): Pick<PngHead, 'width' | 'height' | 'depth' | 'colour' | 'interlaced'> {
  if (body.length !== 13) throw broken('its size cannot be read');
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength);
  const [width, height] = [view.getUint32(0), view.getUint32(4)];
  const [depth, colour] = [body[8]!, body[9]!];
  const allowed: readonly number[] | undefined = DEPTHS[colour as PngHead['colour']];
  if (allowed?.includes(depth) !== true) throw broken(`it has ${depth} bits of colour type ${colour}`);
  if (body[10] !== 0 || body[11] !== 0 || body[12]! > 1) throw broken('it is packed in a way that is not known');
  return { width, height, depth, colour: colour as PngHead['colour'], interlaced: body[12] === 1 };
}

let table: Uint32Array | undefined;

/** CRC-32 (ISO 3309), as annex D of the standard for PNG has it, from memory. */
export function crc(bytes: Uint8Array): number {
  table ??= Uint32Array.from({ length: 256 }, (_, n) => {
    let c = n;
    for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
    return c;
  });
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) c = table[(c ^ bytes[i]!) & 0xff]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
