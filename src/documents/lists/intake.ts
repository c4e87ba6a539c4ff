import type { Drawing, Item } from '../../drawing/model.ts';
import type { Fonts } from '../../fonts/model.ts';
import { box } from '../../geometry/box.ts';
import { point, type Size } from '../../geometry/point.ts';
import type { Section } from '../../text/bench-flow.ts';
import {
  BOLD,
  type Chunk,
  chunkLines,
  crossIn,
  depthOf,
  FINE,
  moved,
  type Part,
  TEXT,
  textPart,
  tickSquare,
  wordChunk,
} from '../../text/bench-type.ts';
import { boxItem, capHeight, fitted, LEADING, set } from '../../text/type-scale.ts';
import type { Units } from '../../units/units.ts';
import type { BenchJob } from '../ticket/model.ts';
import { listedSheets } from '../ticket/page.ts';
import { type Field, intakeFields } from './intake-fields.ts';

const UNIT_NAMES: Readonly<Record<Units, string>> = { in: 'inches', mm: 'millimetres', cm: 'centimetres' };

/** Room for a line written by hand. */
const ROW = 7.4;
const LABEL = 36;

/** The form in which a job is taken in with the customer; with a job its fields are filled as far as the job knows. */
export function intakeSheets(
  work: BenchJob | undefined,
  units: Units,
  { paper, fonts }: { readonly paper: Size; readonly fonts: Fonts },
): readonly Drawing[] {
  const sections = intakeFields(work, units).map(
    ({ title, fields }): Section => ({
      title,
      parts: (width) => fields.map((field) => fieldPart(field, width, fonts)),
    }),
  );
  const title = work === undefined ? 'Intake' : `${work.job.title}, intake`;
  const lead = `Lengths in ${UNIT_NAMES[units]}; width × height, seen from the face`;
  return listedSheets({ title, name: 'Intake', lead, group: 'intake', sections, paper, fonts });
}

function fieldPart(field: Field, width: number, fonts: Fonts): Part {
  switch (field.kind) {
    case 'line':
      return linePart(field.label, field.value, width, fonts);
    case 'choice':
      return choicePart(field.label, field.options, width, fonts);
    case 'measure':
      return measurePart(width, fonts);
    default: {
      const never: never = field;
      return never;
    }
  }
}

/** The label, and a line behind it; what is filled in stands on the line, and on more of them where it is long. */
function linePart(label: string, value: string | undefined, width: number, fonts: Fonts): Part {
  const room = width - LABEL;
  const said = value === undefined ? undefined : textPart(value, room, BOLD, fonts);
  const count = said?.items.length ?? 1;
  const first = ROW - 2.2;
  const pitch = LEADING * BOLD.size;
  const height = ROW + (count - 1) * pitch;
  const style = fitted(label, TEXT, LABEL - 2, 0.6, fonts);
  const base = height - 0.6;
  return {
    items: [
      set(label, 0, first, style),
      ...(said === undefined ? [] : moved(said.items, LABEL, first - said.base)),
      { kind: 'line', pen: 'write', from: point(LABEL, base), to: point(width, base) },
    ],
    height,
  };
}

function choicePart(
  label: string,
  options: readonly { readonly word: string; readonly chosen: boolean }[],
  width: number,
  fonts: Fonts,
): Part {
  const first = ROW - 2.2;
  const chunks = options.map(({ word, chosen }): readonly Chunk[] => {
    const { side } = tickSquare(0, 0, TEXT, fonts);
    const square: Chunk = {
      width: side,
      items: (x, y) => {
        const { item } = tickSquare(x, y, TEXT, fonts);
        return chosen ? [item, ...crossIn(x, y, TEXT, fonts)] : [item];
      },
    };
    const said = wordChunk(word, TEXT, fonts);
    // More room behind a word than before it: each belongs to the square at its left.
    return [square, { ...said, width: said.width + 2.6 }];
  });
  const pitch = 1.75 * TEXT.size;
  const lines = chunkLines(chunks, width - LABEL, 1.7, pitch);
  return {
    items: [
      set(label, 0, first, fitted(label, TEXT, LABEL - 2, 0.6, fonts)),
      ...moved(lines.items, LABEL, first - pitch),
    ],
    height: Math.max(ROW, first - pitch + lines.height + depthOf(TEXT, fonts) + 0.6),
  };
}

/** The work with a line at each of its four sides: both directions are measured at both ends. */
function measurePart(width: number, fonts: Fonts): Part {
  const height = 40;
  const [w, h] = [0.36 * width, 21];
  const [x, y] = [(width - w) / 2, (height - h) / 2 + 1];
  const cap = capHeight(FINE, fonts);
  const wide = 0.26 * width;
  const at = (word: string, left: number, base: number): readonly Item[] => [
    { kind: 'line', pen: 'write', from: point(left, base), to: point(left + wide, base) },
    set(word, left + wide / 2, base + 1.1 + cap, FINE, 'middle'),
  ];
  const middle = y + h / 2;
  const inner = fitted('measure both ends', FINE, w - 3, 0.5, fonts);
  return {
    items: [
      boxItem(box(x, y, w, h), undefined, 'edge'),
      set('measure both ends', width / 2, middle - 0.6, inner, 'middle'),
      set('of each direction', width / 2, middle + 1.2 * inner.size, inner, 'middle'),
      ...at('width at the top', (width - wide) / 2, y - 2.4 - cap),
      ...at('width at the bottom', (width - wide) / 2, y + h + 6),
      ...at('height at the left', x - wide - 3, middle + 1),
      ...at('height at the right', x + w + 3, middle + 1),
    ],
    height: height + 2,
  };
}
