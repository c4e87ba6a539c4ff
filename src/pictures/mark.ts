import type { PathItem } from '../drawing/model.ts';
import { box } from '../geometry/box.ts';
import type { Size } from '../geometry/point.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import { writeJpeg } from './jpeg-write.ts';
import { type PreparedPicture, Unreadable } from './model.ts';
import { openPicture, readPart } from './picture.ts';
import { readSvg } from './svg/read-svg.ts';

/** A shop's own mark: areas to be painted, or a picture. Only its proportions count. */
export interface Mark extends Size {
  readonly items?: readonly PathItem[];
  readonly picture?: PreparedPicture;
}

/** Text, whatever stands before the first element. */
const isMarkup = (bytes: Uint8Array): boolean =>
  /^\ufeff?\s*<(?:\?xml|svg|!--|!DOCTYPE\s+svg)/i.test(new TextDecoder().decode(bytes.subarray(0, 200)));

/** A mark out of its file, an SVG, JPEG or PNG by what is in it; a picture no finer than `most`. Errors: `mark-svg`, those of `openPicture`. */
export async function readMark(
  bytes: Uint8Array,
  name: string,
  most: Size,
  path: Problem['path'],
): Promise<Result<Mark>> {
  if (isMarkup(bytes)) {
    try {
      return succeed(readSvg(new TextDecoder().decode(bytes)));
    } catch (problem) {
      if (problem instanceof Unreadable) return fail([error(problem.code, path, problem.message, problem.hint)]);
      throw problem;
    }
  }
  const opened = openPicture(bytes, name, path);
  if (!opened.ok) return opened;
  const { width, height } = opened.value.size;
  const part = await readPart(opened.value, box(0, 0, width, height), most, path);
  if (!part.ok) return part;
  return succeed({ width, height, picture: writeJpeg(part.value) }, opened.value.warnings);
}
