import type { MachineKind } from '../shop/machine.ts';

/** Short, and in words of our own; the machine's manual goes before them. */
const OF_KIND: Readonly<Record<MachineKind, readonly string[]>> = {
  laser: [
    'Stay beside the laser while it runs; board can catch fire. Extraction on, extinguisher within reach.',
    'Never put vinyl, PVC or anything of unknown make under a laser: the fumes poison people and machine.',
  ],
  knife: ['Keep hands out of the bed while the knife can move. Spent blades go into a box that they cannot pierce.'],
  bevel: [
    'Keep hands out of the bed while the head can move, and the blade away from clamps and rails.',
    'Spent blades go into a box that they cannot pierce.',
  ],
};

/** What is said on the coupon, in every file and by the command. */
export const cautions = (kind: MachineKind): readonly string[] => [
  ...OF_KIND[kind],
  "The machine's manual and the local rules on fire, fumes and waste come first. Try a spare piece of the same board.",
];
