/** Wrong input, and what the user must be told: where (line and column of the job, or the name of another place) and words. */
export interface BadJob {
  readonly what: string;
  readonly job: string;
  readonly shop?: string;
  readonly place: string;
  readonly words: readonly string[];
}

const openings = 'openings: [{artwork: 10 x 12, overlap: 1/4}]';
const double = '{board: {thickness: 1.4 mm}}, {board: {thickness: 1.4 mm}, reveal: 1/4}';

export const BAD_JOBS: readonly BadJob[] = [
  {
    what: 'a decimal comma',
    job: `mat:\n  outer: 16,5 x 20\n${openings}`,
    place: 'job.yaml:2:10',
    words: ['decimal comma', '16.5'],
  },
  {
    what: 'an unknown key',
    job: `mat: {outer: 16 x 20, boarder: 3}\n${openings}`,
    place: 'job.yaml:1:23',
    words: ['boarder', 'did you mean border'],
  },
  {
    what: 'an unknown key at the top',
    job: `mat: {outer: 16 x 20}\nopening: [{artwork: 10 x 12}]`,
    place: 'job.yaml:2:1',
    words: ['opening', 'openings'],
  },
  {
    what: 'a key that means something to the language',
    job: `__proto__: {a: 1}\nmat: {outer: 16 x 20}\n${openings}`,
    place: 'job.yaml:1:1',
    words: ['__proto__'],
  },
  { what: 'no openings', job: 'mat: {outer: 16 x 20}', place: 'job.yaml:1:1', words: ['openings'] },
  {
    what: 'an empty list of openings',
    job: 'mat: {outer: 16 x 20}\nopenings: []',
    place: 'job.yaml:2:11',
    words: ['openings'],
  },
  { what: 'sizes that do not settle the mat', job: openings, place: 'job.yaml:1:1', words: ['mat.outer', 'give'] },
  {
    what: 'a border that contradicts the outer size',
    job: `mat:\n  outer: 16 x 20\n  border: 3\n  layers: [${double}]\nopenings: [{artwork: 10 1/2 x 13 1/2, overlap: 1/4}]`,
    place: 'job.yaml:2:10',
    words: ['16 1/2 in', '16 in', '1/2 in'],
  },
  {
    what: 'an opening larger than the mat',
    job: `mat: {outer: 8 x 10}\n${openings}`,
    place: 'job.yaml:1:6',
    words: ['border'],
  },
  {
    what: 'a reveal narrower than the bevel above',
    job: `mat: {outer: 16 x 20, layers: [{board: {thickness: 3 mm}}, {board: {thickness: 1.4 mm}, reveal: 2 mm}]}\n${openings}`,
    place: 'job.yaml:1:',
    words: ['reveal'],
  },
  {
    what: 'a negative border',
    job: `mat: {outer: 16 x 20, border: -1}\n${openings}`,
    place: 'job.yaml:1:31',
    words: ['border'],
  },
  { what: 'a size of zero', job: `mat: {outer: 0 x 20}\n${openings}`, place: 'job.yaml:1:14', words: ['outer'] },
  { what: 'an absurd size', job: `mat: {outer: 16 x 900}\n${openings}`, place: 'job.yaml:1:14', words: ['5'] },
  {
    what: 'infinity',
    job: `mat: {outer: 16 x 20, border: .inf}\n${openings}`,
    place: 'job.yaml:1:31',
    words: ['border'],
  },
  {
    what: 'no number',
    job: `mat: {outer: 16 x 20, border: .nan}\n${openings}`,
    place: 'job.yaml:1:31',
    words: ['border'],
  },
  { what: 'null', job: `mat: {outer: null}\n${openings}`, place: 'job.yaml:1:14', words: ['null'] },
  {
    what: 'a truth value as a length',
    job: `mat: {outer: 16 x 20, border: true}\n${openings}`,
    place: 'job.yaml:1:31',
    words: ['border'],
  },
  { what: 'a size with one side', job: `mat: {outer: 16}\n${openings}`, place: 'job.yaml:1:14', words: ['16 x 20'] },
  {
    what: 'a size with three sides',
    job: `mat: {outer: 16 x 20 x 3}\n${openings}`,
    place: 'job.yaml:1:14',
    words: ['size'],
  },
  {
    what: 'a unit that is none',
    job: `mat: {outer: 16 x 20 furlongs}\n${openings}`,
    place: 'job.yaml:1:14',
    words: ['furlongs'],
  },
  {
    what: 'a fraction over zero',
    job: `mat: {outer: 16 1/0 x 20}\n${openings}`,
    place: 'job.yaml:1:14',
    words: ['zero'],
  },
  {
    what: 'units that are none',
    job: `units: feet\nmat: {outer: 16 x 20}\n${openings}`,
    place: 'job.yaml:1:8',
    words: ['in', 'mm', 'cm'],
  },
  {
    what: 'overlap and float together',
    job: 'mat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 12, overlap: 1/4, float: 1/4}]',
    place: 'job.yaml:2:',
    words: ['overlap', 'float'],
  },
  {
    what: 'an unknown board',
    job: `mat: {outer: 16 x 20, layers: [{board: bone-5}]}\n${openings}`,
    shop: 'boards: {bone-4: {thickness: 1.4 mm}}',
    place: 'job.yaml:1:40',
    words: ['bone-4'],
  },
  {
    what: 'an unknown head',
    job: `mat: {outer: 16 x 20}\n${openings}\nbench: {head: pul-45}`,
    shop: 'heads: {pull-45: {bevel: 45}}',
    place: 'job.yaml:3:15',
    words: ['pull-45'],
  },
  {
    what: 'an unknown shape',
    job: 'mat: {outer: 16 x 20}\nopenings: [{shape: rectangel, artwork: 10 x 12}]',
    place: 'job.yaml:2:20',
    words: ['rectangle'],
  },
  {
    what: 'a bevel beyond the possible',
    job: `mat: {outer: 16 x 20, layers: [{board: {thickness: 1.4 mm}, bevel: 5}]}\n${openings}`,
    place: 'job.yaml:1:',
    words: ['bevel'],
  },
  {
    what: 'a weighting that is none',
    job: `mat: {outer: 16 x 20, weighting: heavy}\n${openings}`,
    place: 'job.yaml:1:34',
    words: ['diagonal'],
  },
  {
    what: 'half a job',
    job: 'count: 1/2\nmat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 12}]',
    place: 'job.yaml:1:8',
    words: ['count'],
  },
  {
    what: 'a paper that is none',
    job: `mat: {outer: 16 x 20}\n${openings}\nprint: {paper: lettre}`,
    place: 'job.yaml:3:16',
    words: ['letter'],
  },
  {
    what: 'margins that leave no paper',
    job: `mat: {outer: 16 x 20}\n${openings}\nprint: {margin: 6}`,
    place: 'job.yaml:3:',
    words: ['margin'],
  },
  {
    what: 'a transfer that is none',
    job: `mat: {outer: 16 x 20}\n${openings}\nprint: {transfer: carbon}`,
    place: 'job.yaml:3:19',
    words: ['prick', 'cut-through'],
  },
  {
    what: 'two values for one key',
    job: `mat: {outer: 16 x 20, outer: 18 x 24}\n${openings}`,
    place: 'job.yaml:1:23',
    words: ['outer'],
  },
  { what: 'YAML that is none', job: 'mat: {outer: 16 x 20\nopenings: [', place: 'job.yaml:', words: [] },
  {
    what: 'two documents',
    job: `mat: {outer: 16 x 20}\n${openings}\n---\na: 1`,
    place: 'job.yaml:',
    words: ['document'],
  },
  { what: 'a list instead of a job', job: '- 16 x 20', place: 'job.yaml:1:1', words: [] },
  { what: 'an empty file', job: '', place: 'job.yaml', words: [] },
  {
    what: 'an alias bomb',
    job: `a: &a [x, x, x, x, x, x, x, x, x]\n${Array.from({ length: 9 }, (_, i) => `${'bcdefghij'[i]}: &${'bcdefghij'[i]} [${Array(9).fill(`*${'abcdefghi'[i]}`).join(', ')}]`).join('\n')}\n`,
    place: 'job.yaml:',
    words: [],
  },
  { what: 'deep nesting', job: `mat: ${'['.repeat(5000)}`, place: 'job.yaml:1', words: ['deep'] },
  {
    what: 'a file beyond all measure',
    job: `# ${'x'.repeat(300_000)}\nmat: {outer: 16 x 20}`,
    place: 'job.yaml',
    words: ['256 KiB'],
  },
  {
    what: 'a control character',
    job: 'title: "a\\u0007b"\nmat: {outer: 16 x 20}\nopenings: [{artwork: 10 x 12}]',
    place: 'job.yaml:1:8',
    words: ['invisible'],
  },
  { what: 'a tag', job: `mat: !!js/function 'x'\n${openings}`, place: 'job.yaml:1', words: [] },
  {
    what: "a shop's board thinner than nothing",
    job: `mat: {outer: 16 x 20}\n${openings}`,
    shop: 'boards:\n  bone-4: {thickness: -1 mm}',
    place: 'shop.yaml:2:23',
    words: ['thickness'],
  },
  {
    what: "a shop's head with a hand that is none",
    job: `mat: {outer: 16 x 20}\n${openings}`,
    shop: 'heads: {pull: {opening: up}}',
    place: 'shop.yaml:1:25',
    words: ['left', 'right'],
  },
];
