import { type Box, box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { readJpeg, reducedSize } from './jpeg.ts';
import type { Side } from './jpeg-blocks.ts';
import { readJpegHead } from './jpeg-head.ts';
import { kindOf } from './kind.ts';
import { type Head, type OpenPicture, type Pixels, Unreadable } from './model.ts';
import { readPng } from './png.ts';
import { readPngHead } from './png-head.ts';
import { Reducer } from './reducer.ts';
import { inFile, upright, uprightSize } from './turned.ts';

/** Large scans have a few hundred million pixels; beyond that a file is a mistake, or an attack. */
const MOST_PIXELS = 400e6;

type Path = Problem['path'];

/**
 * The head of a picture's file, JPEG or PNG by its first bytes, whatever it is called. Problems are told at `path`:
 * `picture-kind`, `picture-broken`, `picture-large`, `picture-empty`; `picture-cmyk`; warnings:
 * `picture-name`, `picture-profile`.
 */
export function openPicture(bytes: Uint8Array, name: string, path: Path): Result<OpenPicture> {
  const kind = kindOf(bytes, name);
  if (!kind.ok) return fail([error(kind.code, path, kind.message, kind.hint)]);
  try {
    const opened = kind.value === 'png' ? openPng(bytes) : openJpeg(bytes);
    const { head } = opened;
    if (head.width === 0 || head.height === 0) {
      return fail([error('picture-empty', path, 'the picture has no pixels', 'is this the right file?')]);
    }
    if (head.width * head.height > MOST_PIXELS) {
      const message = `the picture has ${head.width} × ${head.height} pixels; at most ${MOST_PIXELS / 1e6} million are read`;
      return fail([error('picture-large', path, message, 'save it smaller')]);
    }
    const warnings = [...(kind.warning === undefined ? [] : [kind.warning]), ...notesOf(head)];
    return succeed({
      size: uprightSize(head, head.orientation),
      warnings: warnings.map(({ code, message, hint }) => warning(code, path, message, hint)),
      read: async (crop, most) => {
        const part = inFile(crop, head, head.orientation);
        const swapped = uprightSize(most, head.orientation);
        return upright(await opened.read(part, sizeWithin(part, swapped)), head.orientation);
      },
    });
  } catch (problem) {
    return fail([unreadable(problem, path)]);
  }
}

/** Reads the part that is wanted; what the reader finds wrong there is a problem at `path`. */
export async function readPart(picture: OpenPicture, crop: Box, most: Size, path: Path): Promise<Result<Pixels>> {
  try {
    return succeed(await picture.read(crop, most));
  } catch (problem) {
    return fail([unreadable(problem, path)]);
  }
}

function unreadable(problem: unknown, path: Path): Problem {
  if (problem instanceof Unreadable) return error(problem.code, path, problem.message, problem.hint);
  throw problem;
}

interface Opened {
  readonly head: Head;
  readonly read: (part: Box, size: Size) => Promise<Pixels>;
}

function openPng(bytes: Uint8Array): Opened {
  const head = readPngHead(bytes);
  return {
    head,
    read: async (part, size) => {
      const reducer = new Reducer(head, part, size);
      await readPng(head, reducer);
      return reducer.finish();
    },
  };
}

function openJpeg(bytes: Uint8Array): Opened {
  const head = readJpegHead(bytes);
  return {
    head,
    read: async (part, size) => {
      // Half, a quarter or an eighth of the picture, as long as it stays as fine as what is wanted.
      const fits = (side: Side): boolean =>
        (part.width * side) / 8 >= size.width && (part.height * side) / 8 >= size.height;
      const side = ([1, 2, 4] as const).find(fits) ?? 8;
      const scale = side / 8;
      const within = reducedSize(head, side);
      const smaller = box(part.x * scale, part.y * scale, part.width * scale, part.height * scale);
      const reducer = new Reducer(within, smaller, size);
      readJpeg(bytes, head, side, reducer);
      return reducer.finish();
    },
  };
}

/** Whole pixels of the part's own proportions, no more than the part has and than fit. */
function sizeWithin(part: Size, most: Size): Size {
  const scale = Math.min(1, most.width / part.width, most.height / part.height);
  const whole = (length: number): number =>
    Math.max(1, Math.min(Math.floor(length + 1e-9), Math.round(length * scale)));
  return { width: whole(part.width), height: whole(part.height) };
}

function notesOf(head: Head): readonly { readonly code: string; readonly message: string; readonly hint: string }[] {
  return head.notes.map((note) => {
    switch (note) {
      case 'profile':
        return {
          code: 'picture-profile',
          message: 'the picture has a colour profile, which is not read: its colours are taken as sRGB',
          hint: 'save it in sRGB where its colours matter',
        };
      default: {
        const never: never = note;
        throw new TypeError(`unknown note ${String(never)}`);
      }
    }
  });
}
