import type { WantedPicture } from '../../documents/proof/model.ts';
import type { OpenPicture, Pictures, PreparedPicture } from '../../pictures/model.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../../problems/problem.ts';
import { dotsFromMm } from '../../units/units.ts';
import type { PictureReader } from '../options.ts';

/** Fine enough for a good print seen in the hand. */
const DPI = 200;

const pathOf = (opening: number): Problem['path'] => ['openings', opening, 'picture'];

/** Heads only. Where nobody hands pictures over at all, placeholders stand in, with a warning. */
export async function openPictures(
  names: readonly (string | undefined)[],
  source: PictureReader | undefined,
): Promise<Result<readonly (OpenPicture | undefined)[]>> {
  if (names.every((name) => name === undefined)) return succeed([]);
  const { openPicture } = await import('../../pictures/picture.ts');
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const opened: (OpenPicture | undefined)[] = [];
  for (const [i, name] of names.entries()) {
    if (name === undefined || source === undefined) {
      if (name !== undefined) {
        const message = 'the picture was not handed over, so a placeholder is drawn';
        warnings.push(warning('picture-missing', pathOf(i), message, 'hand its bytes over with the job'));
      }
      opened.push(undefined);
      continue;
    }
    const found = await source(name);
    if ('why' in found) {
      problems.push(error('picture-unreadable', pathOf(i), found.why, found.hint));
      continue;
    }
    const picture = openPicture(found.bytes, name, pathOf(i));
    if (picture.ok) {
      opened.push(picture.value);
      warnings.push(...picture.value.warnings);
    } else problems.push(...picture.problems);
  }
  return problems.length > 0 ? fail(problems) : succeed(opened, warnings);
}

/** The parts that the proof shows, as fine as they are printed. */
export async function preparePictures(
  wanted: readonly WantedPicture[],
  opened: readonly (OpenPicture | undefined)[],
): Promise<Result<Pictures>> {
  if (wanted.length === 0) return succeed({});
  const [{ readPart }, { writeJpeg }] = await Promise.all([
    import('../../pictures/picture.ts'),
    import('../../pictures/jpeg-write.ts'),
  ]);
  const made: Record<string, PreparedPicture> = {};
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const { id, opening, crop, size, cut } of wanted) {
    const path = pathOf(opening);
    const pixels = (mm: number): number => Math.max(1, Math.round(dotsFromMm(mm, DPI)));
    const most = { width: pixels(size.width), height: pixels(size.height) };
    const part = await readPart(opened[opening]!, crop, most, path);
    if (!part.ok) {
      problems.push(...part.problems);
      continue;
    }
    made[id] = writeJpeg(part.value);
    if (cut && warnings.length === 0) {
      const message = 'the picture has other proportions than the artwork, so its edges are cut off evenly';
      warnings.push(
        warning('picture-proportions', path, message, 'crop it to the artwork, or measure the artwork again'),
      );
    }
  }
  return problems.length > 0 ? fail(problems) : succeed(made, warnings);
}
