/** Jobs at the edge of what can be cut, and whatever fuzzing finds: none may crash, hang or give numbers that are none. */
export const FOUND: readonly string[] = [
  // Nothing is left of the mat once the blank is smaller than its opening.
  'mat: {outer: 16 x 20}\nopenings: [{size: 10 x 14}]\nasCut: {outer: 2 x 2}\n',
  // An opening as cut that is larger than its board.
  'mat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 14}]\nasCut: {openings: [{size: 190 x 190}]}\n',
  // An under mat as cut that is larger than the opening above it.
  'mat: {outer: 16 x 20, layers: [{}, {}]}\nopenings: [{size: 8 x 10}]\nasCut: {openings: [{layer: 2, size: 9 x 12}]}\n',
  // A weighting by the diagonal, with a blank so short that top and bottom swap.
  'mat: {outer: 20 x 16, weighting: diagonal}\nopenings: [{size: 12 x 8}]\nasCut: {outer: 12 1/4 x 8 1/4}\n',
  // Borders asked for on all sides, which cannot all give way evenly any more.
  'mat: {border: 1}\nopenings: [{size: 10 x 10}]\nasCut: {outer: 10 x 13}\n',
  // A reveal by side below an oval as cut.
  'mat: {outer: 16 x 20, layers: [{}, {reveal: 1/4}, {reveal: 1/4}]}\nopenings: [{shape: oval, size: 8 x 10}]\nasCut: {openings: [{size: 9 1/16 x 11, border: {left: 3}}]}\n',
  // Reveals that name no side.
  'mat: {outer: 16 x 20, layers: [{}, {reveal: {}}, {reveal: 1/4}]}\nopenings: [{artwork: 10 x 14}]\n',
  'mat: {outer: 16 x 20, layers: [{}, {reveal: 1/4}]}\nopenings: [{artwork: 10 x 14, reveals: [{}]}]\n',
  // A cubic whose second handle has no length: its parallel had no numbers, and the nearest of it was looked for without end.
  'mat: {outer: 300 x 360 mm, layers: [{board: {thickness: 1.4 mm}}]}\nopenings: [{shape: outline, outline: M0 0 L160 0 L160 110 C160 160 120 1860 120 1860 120 1860 120 185 80 200 C40 185 0 160 0 110 Z, size: 160 x 200 mm}]\n',
  // Curves that leave a point together: looking for where they meet took more than a second, and was given up before it was found.
  'units: mm\nmat: {outer: 400 x 500, layers: [{}, {reveal: 6}]}\nopenings: [{size: 200 x 250, shape: outline, outline: "M182.7 53.5 H157.4 C25.0 67.2 88.5 82.112 169.9 103.8 S85 150.2 50.3 150.4 Z"}]\n',
  'units: mm\nmat: {outer: 400 x 500, layers: [{}, {reveal: 6}]}\nopenings: [{size: 200 x 250, shape: outline, outline: "M164 199 A0 45 0 0 1 21.841 105.4 S171.393 147.547 65.466 108 S32 181 40 123 Z"}]\n',
  // Reveals that are left out and slanting sides that reach out the farther, the wider they are: it never settled, and a cut left its board.
  'mat: {outer: 24 x 18 in, border: {top: 70 mm}, weighting: {ratio: 4/3}, layers: [{}, {}, {}]}\nopenings: [{shape: outline, outline: "M0 0 H6 L4 5 Z", size: 5 x 7 in}]\nbench: {snap: false}\n',
  // A curve that begins without a handle: its parallel stands still there, and was fitted by sixteen thousand lines of no length.
  'mat: {outer: 16 x 18, layers: [{}, {reveal: 3/16}]}\nopenings: [{size: 4 x 7/8, shape: outline, outline: "M131.284 101.2 S123 39.240 47 14 Q134.267 85.076 39.866 155.416 L159.576 137 Z"}]\n',
  // A spike that points into the opening: on the back its two lines meet half a metre beyond the board.
  'mat: {outer: 16 x 20, layers: [{board: {thickness: 2.9 mm}}]}\nopenings: [{artwork: 9 x 12, overlap: 3/16, shape: outline, outline: "M72.769 60 H130.6 V189.3 C82.8 935.286 128 122.5 163.3 55.935 Z"}]\n',
  // A board of its own size, cut apart.
  'mat: {outer: 24 x 18 in, layers: [{}, {}]}\nopenings: [{artwork: 150 x 220 mm}]\nasCut: {outer: 15 31/32 x 20 1/16, layers: [{}, {blank: 8 x 10}]}\nbench: {stack: apart}\n',
  // An outline that falls apart, with lines round it: they were looked for round an opening that was not there.
  'units: in\nmat: {outer: 16 x 20, layers: [{board: {thickness: 1.4 mm}}]}\nopenings: [{artwork: 10 x 13, overlap: 1/4, lines: [{kind: ink, distance: 3/8}], shape: outline, outline: "M61.771 39 C156.665 115.639 102.388 1 168.5 66 L113.136 109.4 V173.5 L189.5 48 Z"}]\n',
];
