import type { Command } from 'commander';
import type { Output } from '../outputs/output.ts';
import type { OutputId } from '../outputs/records.ts';
import { OUTPUTS } from '../outputs/table.ts';
import type { GuidePageName } from './guide-pages.ts';

/** A command; the table also feeds the help. */
export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  /** The page of the guide that explains it. */
  readonly guide: GuidePageName;
  readonly load: () => Promise<{ readonly define: (command: Command) => void }>;
}

/** The page of the guide that explains an output. */
const PAGES: Readonly<Record<OutputId, GuidePageName>> = {
  pattern: 'marking',
  proof: 'proof',
  ticket: 'day',
  intake: 'proof',
  placement: 'marking',
  blanks: 'day',
  labels: 'day',
  stock: 'day',
  jig: 'measuring',
  cutfile: 'machines',
};

/** Outputs whose command does more than to make them. */
const OWN: { readonly [Id in OutputId]?: CommandEntry['load'] } = {
  jig: () => import('./commands/jig.ts'),
  stock: () => import('./commands/stock.ts'),
};

/** Each output is a command by itself. */
const outputCommand = (output: Output): CommandEntry => ({
  name: output.id,
  summary: output.summary,
  guide: PAGES[output.id],
  load: () =>
    OWN[output.id]?.() ?? import('./output/command.ts').then(({ defineOutput }) => ({ define: defineOutput(output) })),
});

export const COMMANDS: readonly CommandEntry[] = [
  {
    name: 'new',
    summary: 'start a job from a template, by questions or by options; or a shop',
    guide: 'first-mat',
    load: () => import('./commands/new.ts'),
  },
  {
    name: 'check',
    summary: 'solve a job and print its sizes, settings and warnings',
    guide: 'first-mat',
    load: () => import('./commands/check.ts'),
  },
  ...OUTPUTS.map(outputCommand),
  {
    name: 'calibrate',
    summary: 'read what was measured on a jig, and write the correction into shop.yaml',
    guide: 'measuring',
    load: () => import('./commands/calibrate.ts'),
  },
  {
    name: 'make',
    summary: 'everything for every job: patterns, files for the machines, proof, ticket and the other sheets',
    guide: 'day',
    load: () => import('./commands/make.ts'),
  },
  {
    name: 'day',
    summary: 'the jobs of a folder with number, customer and day, and which are made, cut and shelved',
    guide: 'day',
    load: () => import('./commands/day.ts'),
  },
  {
    name: 'table',
    summary: 'jobs that are built alike as rows of a table over one of them',
    guide: 'day',
    load: () => import('./commands/table.ts'),
  },
  {
    name: 'page',
    summary: 'the page for a browser, in one file, with a shop and jobs in it: no terminal is needed from then on',
    guide: 'page',
    load: () => import('./commands/page.ts'),
  },
  {
    name: 'complete',
    summary: 'a script for the shell, so that it completes commands, options and their words',
    guide: 'shop',
    load: () => import('./commands/complete.ts'),
  },
  {
    name: 'schema',
    summary: 'JSON Schema of a job or of the shop, for editors',
    guide: 'shop',
    load: () => import('./commands/schema.ts'),
  },
  {
    name: 'guide',
    summary: 'the guide: from a box of board to a clean corner, in one file for a browser',
    guide: 'README',
    load: () => import('./commands/guide.ts'),
  },
];
