import type { Case } from './case.ts';

const lopsided = `
title: Lopsided
units: mm
mat:
  border: {top: 61, right: 47, bottom: 89, left: 33}
  layers:
    - board: {name: grey, thickness: 1.4, colour: "#888888"}
openings:
  - size: 180 x 240
print: {paper: a4, margin: 10, lap: 12}
`;

const steep = `
title: Sixty degrees, reversed below
units: mm
mat:
  border: {top: 55, sides: 50, bottom: 60}
  layers:
    - {board: {name: thick, thickness: 3.2, colour: "#dddddd"}, bevel: 60}
    - {board: {name: thin, thickness: 1.4, colour: "#444444"}, bevel: {angle: 60, reverse: true}, reveal: 8}
openings:
  - size: 150 x 200
bench: {stack: apart}
print: {paper: a3, margin: 8, transfer: cut-through}
`;

const handHeldShop = `
units: mm
boards:
  white: {thickness: 1.5, colour: "#f8f8f4"}
heads:
  push-45: {bevel: 45, opening: right, straightedge: 38, start: 2.3, stop: 1.1, overrun: 0.4}
printers: {office: {x: 0.9965, y: 0.998}}
`;

const handHeld = `
title: Hand-held head
units: mm
mat:
  outer: 300 x 400
  layers: [{board: white}]
openings:
  - {artwork: 180 x 260, overlap: 5}
bench: {head: push-45}
print: {paper: legal, margin: 9, join: butt, printer: office}
`;

/** Mats that neither a template nor an example has. */
export const OWN_CASES: readonly Case[] = [
  { name: 'lopsided', job: lopsided, file: 'lopsided.yaml', inFull: true, pictures: { 'pattern-1': [2] } },
  { name: 'steep', job: steep, file: 'steep.yaml', inFull: true },
  { name: 'hand-held', job: handHeld, file: 'hand-held.yaml', shop: handHeldShop, inFull: true },
];
