/** Jobs that the templates have no like of: reverse and thick, several openings, a guide that is too short and scant. */
export interface Sample {
  readonly name: string;
  readonly job: string;
  readonly shop?: string;
}

const curlew = `
title: Curlew, second state
units: mm
count: 3
mat:
  outer: 400 x 500
  layers:
    - {board: {name: Bone, thickness: 3.1, plies: 8, colour: "#efe9dc"}, bevel: {angle: 45, reverse: true}}
    - {board: {name: Slate, thickness: 1.4, colour: "#5c6670"}, reveal: 9}
  frame: {inside: 403 x 503, clearance: 3, lip: 6, width: 22, depth: 15, glazing: {name: Clear glass, thickness: 2},
    backing: {name: Backing board, thickness: 3}, art: 0.4}
openings: [{artwork: 230 x 300, overlap: 5, lines: [{kind: groove, distance: 12}]}]
bench: {stack: apart}
`;

const row = `
title: Three states in a row
units: cm
mat:
  layers: [{board: {name: White, thickness: 1.5 mm, colour: "#fafafa"}}]
  border: {top: 6, sides: 5.2, bottom: 7.1}
openings:
  - {name: first state, size: 9 x 12}
  - {name: second state, size: 9 x 12}
  - {name: third state, size: 9 x 12}
arrange: {gap: 2.3}
print: {paper: a4}
`;

const scantShop = `
units: in
boards: {bone: {name: Bone, thickness: 1.4 mm, colour: "#efe9dc"}, thick: {name: Thick, thickness: 2.8 mm, colour: "#ffffff"}}
heads: {pull: {bevel: 45, opening: right, start: [{thickness: 1.4 mm, offset: 1.2 mm}, {thickness: 2.8 mm, offset: 1.5 mm}], stop: -0.4 mm, overrun: 0.3 mm}}
guide: {graduation: 1/16 in, longest: 5 in, setAt: 1.4 mm}
`;

const scant = `
title: Scant and full
mat:
  outer: 17 1/8 x 22 5/16
  layers: [{board: bone}, {board: thick, reveal: 5/16}]
openings: [{artwork: 8 1/3 x 11, overlap: 3/16}]
bench: {head: pull, stack: together}
`;

export const SAMPLES: readonly Sample[] = [
  { name: 'reverse, thick, apart', job: curlew },
  { name: 'a row in cm', job: row },
  { name: 'scant and full', job: scant, shop: scantShop },
];
