import { describe, expect, it } from 'vitest';
import { base } from '../pictures/made.ts';
import { run } from './run.ts';

const job =
  'mat: {outer: 16 x 20, layers: [{board: a}, {board: b, reveal: 1/4}]}\nopenings: [{artwork: 10 1/2 x 13 1/2}]\n';
const shop =
  'boards: {a: {name: Bone}, b: {name: Slate}, c: {name: Rust, thickness: 2 mm}}\nprices: {labour: 20, currency: "£"}\n';
const files = { 'job.yaml': job, 'shop.yaml': shop };
const pictured = (name: string) => ({
  ...files,
  'job.yaml': job.replace('[{artwork', `[{picture: "${name}", artwork`),
});

describe('proof', () => {
  it('writes a PDF, and SVG and PNG where they are asked for', async () => {
    const ran = await run(['proof', '{}/job.yaml', '--svg', '--png', '--dpi', '40', '--out', '{}/out'], files);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.made).toEqual(['out', 'out/proof.pdf', 'out/proof.png', 'out/proof.svg']);
    expect(ran.out).toMatch(/^proof\.pdf {2}one sheet, scale 1 : [\d.]+\n {2}no total yet\nwritten to \{\}\/out\n$/u);
  });

  it('--json gives one document', async () => {
    const ran = await run(['proof', '{}/job.yaml', '--json', '--vary', 'mat.layers[1].board=b,c'], files);
    const made = JSON.parse(ran.out);
    expect(made.files).toEqual(['proof.pdf']);
    expect(made.proof.variants.map(({ label }: { label: string }) => label)).toEqual(['Slate', 'Rust']);
    expect(made.outer).toEqual({ width: 16 * 25.4, height: 20 * 25.4 });
  });

  it('is drawn as PNG where no SVG is asked for', async () => {
    const ran = await run(['proof', '{}/job.yaml', '--png', '--dpi', '40', '--out', '{}/out'], files);
    expect([ran.code, ran.made]).toEqual([0, ['out', 'out/proof.pdf', 'out/proof.png']]);
  });

  it('shows the picture that lies beside the job', async () => {
    const picture = new Uint8Array(await base(105, 135).png().toBuffer());
    const ran = await run(['proof', '{}/job.yaml'], { ...pictured('heron.png'), 'heron.png': picture });
    expect([ran.code, ran.err]).toEqual([0, '']);
  });

  const refused: readonly (readonly [string, readonly string[], Readonly<Record<string, string>>, RegExp])[] = [
    [
      'a picture that is not there',
      [],
      pictured('no.png'),
      /job\.yaml:2:\d+ {2}openings\[0\]\.picture {2}there is no picture .*no\.png/,
    ],
    ['a folder for a picture', [], pictured('.'), /is a folder/],
    ['a device for a picture', [], pictured('/dev/zero'), /is a device, no plain file/],
    ['an address for a picture', [], pictured('https://example.org/heron.png'), /an address; only files are read/],
    ['a text for a picture', [], pictured('shop.yaml'), /neither a JPEG nor a PNG/],
    ['a roll', ['--paper', 'roll:24in'], files, /a roll is no single sheet/],
    ['something odd to vary', ['--vary', 'mat.layers[1]'], files, /does not say what is to be varied/],
    ['an unknown place to vary', ['--vary', 'mat.layers[4].board=b,c'], files, /a list of 2, so there is no \[4\]/],
    ['a list as if it were a map', ['--vary', 'mat.layers.board=b,c'], files, /a list of 2, so there is no board/],
    ['a value as if it were a map', ['--vary', 'mat.outer.width=b,c'], files, /a single value, so there is no width/],
    ['a key that is not known', ['--vary', 'mat.layers[1].bord=b,c'], files, /did you mean board\?/],
    ['a board that is not known', ['--vary', 'mat.layers[1].board=b,slat'], files, /the shop has no board called slat/],
    ['the same twice', ['--vary', 'mat.layers[1].board=b,b'], files, /has a value twice/],
    ['a missing value', ['--vary', 'mat.layers[1].board=b,'], files, /has a value missing/],
    ['an odd resolution', ['--png', '--dpi', '5000'], files, /give a number from 20 to 600/],
  ];
  it.each(refused)('%s is refused, and nothing is written', async (_, args, given, words) => {
    const ran = await run(['proof', '{}/job.yaml', ...args], given);
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(words);
    expect(ran.err.match(words)).toHaveLength(1);
    expect(ran.made).toEqual([]);
  });
});

describe('words of every kind on a proof', () => {
  it.each([
    ['Tide & <b>ebb</b> "quoted" \\\\ (parens)', undefined],
    ['Ἑλένη, Łódź, Общество, n° ½ × ″', undefined],
    ['Heron 鷺', /no font has the character 鷺 \(U\+9DFA\)/u],
    ['Heron 🪶', /no font has the character 🪶 \(U\+1FAB6\)/u],
    ['אנפה', /Hebrew cannot be set properly/u],
    ['بلشون', /Arabic cannot be set properly/u],
  ] as const)('%s', async (title, words) => {
    const yaml = `title: '${title}'\ncustomer: '${title}'\n${job}`;
    const ran = await run(['proof', '{}/job.yaml', '--svg', '--date', title], { ...files, 'job.yaml': yaml });
    expect(ran.code).toBe(0);
    if (words === undefined) expect(ran.err).toBe('');
    else {
      expect(ran.err).toMatch(words);
      expect(ran.err).toMatch(/job\.yaml:1:8 {2}title {2}warning/u);
    }
  });

  it('control characters are refused by the reader', async () => {
    const ran = await run(['proof', '{}/job.yaml'], { ...files, 'job.yaml': `title: "He\\u0007ron"\n${job}` });
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(/job\.yaml:1:8/u);
  });
});
