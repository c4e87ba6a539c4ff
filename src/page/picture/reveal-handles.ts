import { SIDES, type Side } from '../../geometry/sides.ts';
import type { Piece } from '../engine/answers.ts';
import { said } from '../state/piece.ts';
import { type Handle, plain } from './handle.ts';

/**
 * The edge of every under mat that has one reveal all round, at the first opening. They take turns at the sides, since
 * they lie too near to one another to be told apart by a finger; for the same reason their hold lies inside the opening.
 */
export function revealHandles({ report, units }: Piece): readonly Handle[] {
  const [first] = report.openings;
  return report.layers.slice(1).flatMap(({ name }, i): readonly Handle[] => {
    const cut = first?.layers[i + 1];
    const path = ['mat', 'layers', i + 1, 'reveal'];
    if (cut === undefined || typeof said(path) === 'object' || said(path.with(-1, 'reveals')) !== undefined) return [];
    const side = SIDES[i % SIDES.length]!;
    return [
      {
        id: `reveal-${i + 1}`,
        what: `${name}, reveal`,
        size: `reveals[${i + 1}]`,
        ...edgeOf(cut.face, side),
        value: cut.reveal[side],
        edits: (value) => [{ path, value: plain(value, units) }],
      },
    ];
  });
}

/** A side of an opening's box; a reveal grows inwards. */
function edgeOf(
  { x, y, width, height }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  side: Side,
): Pick<Handle, 'axis' | 'from' | 'to' | 'grows' | 'beside'> {
  const [right, bottom] = [x + width, y + height];
  switch (side) {
    case 'left':
      return { axis: 'x', from: { x, y }, to: { x, y: bottom }, grows: 1, beside: 1 };
    case 'right':
      return { axis: 'x', from: { x: right, y }, to: { x: right, y: bottom }, grows: -1, beside: -1 };
    case 'top':
      return { axis: 'y', from: { x, y }, to: { x: right, y }, grows: 1, beside: 1 };
    case 'bottom':
      return { axis: 'y', from: { x, y: bottom }, to: { x: right, y: bottom }, grows: -1, beside: -1 };
    default: {
      const never: never = side;
      throw new TypeError(`unknown side ${JSON.stringify(never)}`);
    }
  }
}
