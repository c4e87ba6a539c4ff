import { describe, expect, it } from 'vitest';
import { pattern } from '../../src/documents/pattern/pattern.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';

const base = (lettering: string, more = ''): string => `units: mm
mat: {outer: 300 x 400, layers: [{bevel: 60}, {reveal: 6, trimBack: 4}]}
openings: [{name: Heron, size: 120 x 150, place: {left: 90, top: 40}}]
lettering: [${lettering}]
${more}`;

function solved(text: string) {
  const made = solveJob(text, { fonts: FONTS });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const problemsOf = (lettering: string, more = ''): readonly (readonly [string, string])[] => {
  const made = solveJob(base(lettering, more), { fonts: FONTS });
  return made.ok ? [] : made.problems.map(({ code, message }) => [code, message] as const);
};

describe('lettering', () => {
  it('lies below an opening, the gap from face to letters, or where its place says', () => {
    const { mat } = solved(
      base(
        '{text: TERN, height: 20, place: {below: Heron, gap: 30}}, {text: NEST, height: 15, place: {left: 25, bottom: 20}}',
      ),
    );
    const [tern, nest] = mat.lettering!;
    const heron = mat.openings[0]!.layers[0]!.faceBox;
    expect(tern!.box.y).toBeCloseTo(heron.y + heron.height + 30, 9);
    expect(tern!.box.x + tern!.box.width / 2).toBeCloseTo(heron.x + heron.width / 2, 9);
    expect(nest!.box.x).toBeCloseTo(25, 9);
    expect(nest!.box.y + nest!.box.height).toBeCloseTo(380, 9);
    for (const { box, parts } of mat.lettering!) {
      const boxes = parts.map(({ face }) => pathBox(face));
      expect(Math.min(...boxes.map((b) => b.x))).toBeCloseTo(box.x, 6);
      expect(Math.max(...boxes.map((b) => b.y + b.height))).toBeCloseTo(box.y + box.height, 6);
    }
  });

  it('is cut upright, or with the bevel of its board', () => {
    const one = (edge: string) =>
      solved(base(`{text: HEN, height: 60, edge: ${edge}, place: {bottom: 30}}`)).mat.lettering![0]!;
    for (const { face, back } of one('square').parts) expect(back).toEqual(face);
    // 1.4 mm of board at 60°.
    const inset = 1.4 / Math.tan(Math.PI / 3);
    for (const { face, back } of one('bevel').parts) {
      expect(pathBox(back).width).toBeCloseTo(pathBox(face).width - 2 * inset, 3);
      expect(pathBox(back).height).toBeCloseTo(pathBox(face).height - 2 * inset, 3);
    }
  });

  it('is drawn mirrored on the pattern of the top mat, and on no other', () => {
    const { mat, job, strokes } = solved(base('{text: LEND, height: 20, place: {left: 25, bottom: 20}}'));
    const cut = (layer: number) =>
      pattern(mat, strokes, job, layer, { fonts: FONTS }).drawing.groups.flatMap(({ items }) =>
        items.flatMap((item) => (item.kind === 'path' && item.id?.startsWith('cut-letters') ? item.paths : [])),
      );
    const boxes = cut(0).map((path) => pathBox(path));
    expect(boxes.length).toBe(mat.lettering![0]!.parts.length);
    // 1 mm of paper around the board.
    for (const [i, { face }] of mat.lettering![0]!.parts.entries()) {
      const own = pathBox(face);
      expect(boxes[i]!.x).toBeCloseTo(301 - own.x - own.width, 6);
      expect(boxes[i]!.y).toBeCloseTo(own.y + 1, 6);
    }
    expect(cut(1)).toEqual([]);
    const words = pattern(mat, strokes, job, 0, { fonts: FONTS }).drawing.groups.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    );
    expect(words).toContain('LEND: cut upright, by template or machine');
  });

  it('is refused with its text, the reason and the distance', () => {
    const below = 'place: {bottom: 25}';
    const rows: readonly (readonly [string, string, string, string?])[] = [
      [`{text: HERON, height: 20, islands: refuse, ${below}}`, 'lettering-unfit', 'the inside of R would fall out'],
      [`{text: O, height: 8, bridge: 6, ${below}}`, 'lettering-unfit', 'the island of O has no room'],
      [`{text: III, height: 9, weight: regular, edge: bevel, ${below}}`, 'lettering-unfit', 'its bevels meet'],
      ['{text: HEN, height: 20, place: {below: Tern, gap: 9}}', 'below-unknown', 'no opening is called Tern'],
      [
        '{text: HEN, height: 20, place: {below: Heron, gap: 2}}',
        'lettering-near',
        'comes within 2 mm of Heron in the top mat, 6 mm is the least',
      ],
      ['{text: HEN, height: 20, place: {top: 100}}', 'lettering-near', 'comes within 0 mm of Heron'],
      [`{text: LONG AS A PIER, height: 40, ${below}}`, 'lettering-off-mat', 'runs off the part of the mat'],
      ['{text: HEN, height: 20, place: {bottom: 2}}', 'lettering-off-mat', 'beyond the edge of under mat 1'],
      [`{text: HILL, height: 30, spacing: 0, bridge: 6, ${below}}`, 'letters-near', 'come within'],
      [
        `{text: HEN, height: 20, ${below}}, {text: TEN, height: 20, ${below}}`,
        'lettering-near',
        'HEN and the lettering TEN come within 0 mm',
      ],
    ];
    for (const [lettering, code, says] of rows) {
      const found = problemsOf(lettering);
      expect([lettering, found.map(([each]) => each)]).toEqual([lettering, [code]]);
      expect(found[0]![1]).toContain(says);
    }
    const many = Array.from({ length: 9 }, () => '{text: A, height: 20}').join(', ');
    expect(problemsOf(many).map(([code]) => code)).toEqual(['lettering-many']);
  });
});
