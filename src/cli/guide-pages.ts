/** A page of the guide: `examples/guide/NAME.md`, and a chapter of the one file that `matwright guide` names. */
export interface GuidePage {
  readonly name: string;
  readonly title: string;
}

/** In the order in which they are read. */
export const GUIDE_PAGES = [
  { name: 'README', title: 'The guide' },
  { name: 'first-mat', title: 'A first mat' },
  { name: 'double-mat', title: 'A double mat, both ways' },
  { name: 'measuring', title: 'Measure printer, guide and head' },
  { name: 'printing', title: 'Print at full scale' },
  { name: 'marking', title: 'Mark the board: corner sheets, a taped pattern, a placement sheet' },
  { name: 'openings', title: 'A row of openings' },
  { name: 'curves', title: 'Oval and arch, by hand and by machine' },
  { name: 'machines', title: 'Send it to a laser, a knife or a bevel head' },
  { name: 'proof', title: 'Take a job in, and show a proof' },
  { name: 'day', title: 'A day’s work' },
  { name: 'shop', title: 'The shop’s file' },
  { name: 'page', title: 'Without a terminal' },
  { name: 'library', title: 'From a program' },
  { name: 'faults', title: 'What one sees, and what to do' },
  { name: 'numbers', title: 'How the numbers are made' },
] as const satisfies readonly GuidePage[];

export type GuidePageName = (typeof GUIDE_PAGES)[number]['name'];
