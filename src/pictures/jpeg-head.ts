import { orientationOf } from './exif.ts';
import { type Head, type Note, type Orientation, Unreadable } from './model.ts';
import { broken } from './png-head.ts';
import { saysSrgb } from './profile.ts';

/** ITU-T T.81 (JPEG), B.2, from memory: what stands between the start of the picture and its first scan. */
export interface JpegHead extends Head {
  readonly progressive: boolean;
  readonly components: readonly FrameComponent[];
  /** How the components make a colour. */
  readonly colours: 'grey' | 'rgb' | 'ycc';
  /** Where the first segment behind the frame's begins; tables before it are in `tables`. */
  readonly tables: readonly Segment[];
  readonly rest: number;
}

export interface FrameComponent {
  readonly id: number;
  /** Sampling, across and down. */
  readonly h: number;
  readonly v: number;
  readonly quantization: number;
}

export interface Segment {
  readonly marker: number;
  readonly body: Uint8Array;
}

const [SOI, EOI, SOS, DQT, DHT, DRI, APP1, APP2, APP14] = [0xd8, 0xd9, 0xda, 0xdb, 0xc4, 0xdd, 0xe1, 0xe2, 0xee];
export const MARKERS = { SOI, EOI, SOS, DQT, DHT, DRI } as const;

/** Frames by their marker, B.1.1.3. */
const FRAMES: Readonly<Record<number, 'baseline' | 'progressive' | 'lossless' | 'arithmetic'>> = {
  192: 'baseline',
  193: 'baseline',
  194: 'progressive',
  195: 'lossless',
  197: 'lossless',
  198: 'progressive',
  199: 'lossless',
  201: 'arithmetic',
  202: 'arithmetic',
  203: 'lossless',
  205: 'arithmetic',
  206: 'arithmetic',
  207: 'lossless',
};

/** The segment that begins at `at` or behind fill bytes there, and where the next one begins. */
export function segmentAt(bytes: Uint8Array, at: number): Segment & { readonly next: number } {
  let from = at;
  if (bytes[from] !== 0xff) throw broken('a part of it does not begin where it should');
  while (bytes[from] === 0xff) from++;
  const marker = bytes[from];
  if (marker === undefined) throw broken('it ends too soon');
  from++;
  if (marker === SOI || marker === EOI || (marker >= 0xd0 && marker <= 0xd7) || marker === 1) {
    return { marker, body: new Uint8Array(), next: from };
  }
  const length = (bytes[from]! << 8) | bytes[from + 1]!;
  if (!(length >= 2) || from + length > bytes.length) throw broken('it ends too soon');
  return { marker, body: bytes.subarray(from + 2, from + length), next: from + length };
}

const starts = (body: Uint8Array, text: string): boolean =>
  body.length >= text.length && Array.from(text).every((character, i) => body[i] === character.charCodeAt(0));

export function readJpegHead(bytes: Uint8Array): JpegHead {
  const tables: Segment[] = [];
  let orientation: Orientation = 1;
  let adobe: number | undefined;
  let jfif = false;
  const notes: Note[] = [];
  let at = 2;
  for (;;) {
    const segment = segmentAt(bytes, at);
    const { marker, body, next } = segment;
    at = next;
    const kind = FRAMES[marker];
    if (kind !== undefined) {
      const frame = readFrame(kind, body, marker);
      const colours = coloursOf(frame.components, adobe, jfif);
      return { ...frame, colours, orientation, tables, notes, rest: at };
    }
    if (marker === EOI || marker === SOS) throw broken('it has no size');
    if (marker === DQT || marker === DHT || marker === DRI) tables.push(segment);
    else if (marker === APP1 && starts(body, 'Exif\0\0')) orientation = orientationOf(body.subarray(6));
    else if (marker === APP2 && starts(body, 'ICC_PROFILE\0\x01'))
      notes.push(...(saysSrgb(body) ? [] : ['profile' as const]));
    else if (marker === 0xe0 && starts(body, 'JFIF\0')) jfif = true;
    else if (marker === APP14 && starts(body, 'Adobe') && body.length >= 12) adobe = body[11]!;
  }
}

type Frame = Pick<JpegHead, 'width' | 'height' | 'progressive' | 'components'>;

function readFrame(kind: string, body: Uint8Array, marker: number): Frame {
  if (kind === 'lossless' || kind === 'arithmetic' || marker === 198) {
    throw new Unreadable(
      'picture-kind',
      `the picture is a JPEG of a rare kind (${marker === 198 ? 'hierarchical' : kind})`,
      'save it as a usual JPEG, or as PNG',
    );
  }
  const count = body[5]!;
  if (body.length < 6 || body.length < 6 + 3 * count) throw broken('its size cannot be read');
  if (body[0] !== 8) {
    throw new Unreadable(
      'picture-kind',
      `the picture is a JPEG of ${body[0]} bits a colour, where 8 are usual`,
      'save it with 8 bits a colour, or as PNG',
    );
  }
  // What inks look like on paper only their profile can tell, and none is followed here.
  if (count === 4) {
    throw new Unreadable('picture-cmyk', 'the picture is made of inks (CMYK), not of light', 'save it in sRGB');
  }
  const height = (body[1]! << 8) | body[2]!;
  const width = (body[3]! << 8) | body[4]!;
  if (width === 0 || height === 0) throw broken('it has no size');
  const components = Array.from({ length: count }, (_, i): FrameComponent => {
    const from = 6 + 3 * i;
    return { id: body[from]!, h: body[from + 1]! >> 4, v: body[from + 1]! & 15, quantization: body[from + 2]! };
  });
  const sound = components.every(({ h, v, quantization }) => h >= 1 && h <= 4 && v >= 1 && v <= 4 && quantization < 4);
  if (!sound || ![1, 3].includes(count)) throw broken(`it has ${count} colours of a kind that is not known`);
  return { width, height, progressive: kind === 'progressive', components };
}

/**
 * Of three components without a word about them: luminance and colour, unless they are called R, G and B (the transform
 * flag of an Adobe segment: ITU-T T.872, 6.5.3, from memory).
 */
function coloursOf(
  components: readonly FrameComponent[],
  adobe: number | undefined,
  jfif: boolean,
): JpegHead['colours'] {
  if (components.length === 1) return 'grey';
  if (jfif) return 'ycc';
  if (adobe !== undefined) return adobe === 0 ? 'rgb' : 'ycc';
  return components.map(({ id }) => String.fromCharCode(id)).join('') === 'RGB' ? 'rgb' : 'ycc';
}
