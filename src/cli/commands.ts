import type { Command } from 'commander';

/** One file for each command; the table also feeds the help. */
export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  readonly load: () => Promise<{ readonly define: (command: Command) => void }>;
}

export const COMMANDS: readonly CommandEntry[] = [
  {
    name: 'new',
    summary: 'start a job from a template, by questions or by options; or a shop',
    load: () => import('./commands/new.ts'),
  },
  {
    name: 'check',
    summary: 'solve a job and print its sizes, settings and warnings',
    load: () => import('./commands/check.ts'),
  },
  {
    name: 'pattern',
    summary: 'full-scale pattern for the back of the board, one for each layer',
    load: () => import('./commands/pattern.ts'),
  },
  {
    name: 'proof',
    summary: 'the framed piece in colour and to scale, with its sizes and prices, for the customer to sign',
    load: () => import('./commands/proof.ts'),
  },
  {
    name: 'ticket',
    summary: 'the bench ticket: every number in the order in which the bench works, to be ticked off',
    load: () => import('./commands/ticket.ts'),
  },
  {
    name: 'intake',
    summary: 'form to take a job in with the customer, empty or filled in from a job',
    load: () => import('./commands/intake.ts'),
  },
  {
    name: 'placement',
    summary: 'full-scale sheet that shows where the artwork and its hinges go on the backing',
    load: () => import('./commands/placement.ts'),
  },
  {
    name: 'blanks',
    summary: 'every blank of some jobs by board, with stop settings and counts',
    load: () => import('./commands/blanks.ts'),
  },
  {
    name: 'labels',
    summary: 'stickers for blanks and backs, on a grid of rows and columns',
    load: () => import('./commands/labels.ts'),
  },
  {
    name: 'stock',
    summary: 'every blank of some jobs on the shop’s sheets, cut by cut, on as few as can be',
    load: () => import('./commands/stock.ts'),
  },
  {
    name: 'jig',
    summary: 'sheets that measure the printer, the guide and the heads; gauges, sizes to try, a wall chart',
    load: () => import('./commands/jig.ts'),
  },
  {
    name: 'cutfile',
    summary: 'file for a laser, a drag knife or a bevel head: SVG, DXF or HP-GL',
    load: () => import('./commands/cutfile.ts'),
  },
  {
    name: 'calibrate',
    summary: 'read what was measured on a jig, and write the correction into shop.yaml',
    load: () => import('./commands/calibrate.ts'),
  },
  {
    name: 'make',
    summary: 'everything for every job: patterns, files for the machines, proof, ticket and the other sheets',
    load: () => import('./commands/make.ts'),
  },
  {
    name: 'schema',
    summary: 'JSON Schema of a job or of the shop, for editors',
    load: () => import('./commands/schema.ts'),
  },
];
