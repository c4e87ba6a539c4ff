import { itemBox, shownItems } from '../drawing/bounds.ts';
import type { FullScale } from '../drawing/full-scale.ts';
import type { Size } from '../geometry/point.ts';
import { error, type Problem } from '../problems/problem.ts';
import { showLength, showSize } from '../units/print.ts';
import { sheetOf } from './area.ts';
import type { LayoutOptions } from './options.ts';

/** Between margins there must be room for a cross, a name and a ruler. */
const LEAST_AREA = 36;
/** A lap must hold half a cross on either side of its join line. */
const LEAST_LAP = 6;
/** No printer is further off; more is a slip of the pen. */
const FARTHEST_SCALE = 0.25;

/** Everything that is wrong with a layout before anything is laid out; lengths are told in the job's units. */
export function wrongOptions({ drawing, board }: FullScale, options: LayoutOptions): readonly Problem[] {
  const { paper, margin, lap, join, extent, printer, units } = options;
  const at = (...steps: (string | number)[]) => [...(options.path ?? []), ...steps];
  const show = (mm: number) => (Number.isFinite(mm) ? showLength(mm, units) : `${mm}`);
  const problems: Problem[] = [];
  for (const [side, value] of Object.entries(margin)) {
    if (!(value >= 0 && Number.isFinite(value))) {
      problems.push(
        error(
          'margin-negative',
          at('margin'),
          `the ${side} margin is ${show(value)}; a margin is nought or more`,
          'leave it out for the default',
        ),
      );
    }
  }
  if (join === 'lap' && !(lap >= LEAST_LAP)) {
    problems.push(
      error(
        'lap-too-narrow',
        at('lap'),
        `a lap of ${show(lap)} is too narrow to join by; at least ${show(LEAST_LAP)} is needed`,
        'make it wider, or write join: butt for sheets that are laid edge to edge',
      ),
    );
  }
  for (const axis of ['x', 'y'] as const) {
    const value = printer?.[axis] ?? 1;
    if (!(Math.abs(value - 1) <= FARTHEST_SCALE)) {
      problems.push(
        error(
          'printer-scale',
          at('printer'),
          `printer ${printer!.id} is said to print ${value} of the nominal length in ${axis}; between ${1 - FARTHEST_SCALE} and ${1 + FARTHEST_SCALE} is allowed`,
          'give the measured length divided by the nominal one: 99.5 mm instead of 100 is 0.995',
        ),
      );
    }
  }
  if (extent === 'corners' && board === undefined) {
    problems.push(
      error(
        'corners-without-board',
        at(),
        'corner sheets are laid on by the corners of a board, and this drawing has none',
        'print it whole',
      ),
    );
  }
  if (shownItems(drawing).every((item) => itemBox(item, drawing.pens, options.fonts) === undefined)) {
    problems.push(error('nothing-drawn', at(), 'there is nothing to print', 'show at least one part of the drawing'));
  }
  if (problems.length > 0 || paper.kind === 'fit') return problems;

  const size: Size = paper.kind === 'sheet' ? paper : { width: paper.width, height: paper.width };
  const { area, margin: wide } = sheetOf(size, options, false);
  const small = Math.min(area.width, paper.kind === 'sheet' ? area.height : area.width);
  if (small < LEAST_AREA) {
    const taken = `${show(wide.left)} and ${show(wide.right)} across, ${show(wide.top)} and ${show(wide.bottom)} down`;
    problems.push(
      error(
        'margins-too-wide',
        at('margin'),
        `margins of ${taken} leave less than ${show(LEAST_AREA)} of ${paper.kind === 'sheet' ? showSize(size, units) : show(size.width)} paper to draw on`,
        'make the margins smaller or take a larger paper',
      ),
    );
  } else if (join === 'lap' && paper.kind === 'sheet' && lap > small / 2) {
    problems.push(
      error(
        'lap-too-wide',
        at('lap'),
        `a lap of ${show(lap)} is more than half of what a sheet shows, ${show(small)}`,
        `make it ${show(Math.floor(small / 2))} or less`,
      ),
    );
  }
  return problems;
}
