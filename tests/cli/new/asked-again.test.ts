import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { byQuestions } from '../../../src/cli/new/by-questions.ts';
import { starterIn } from '../../../src/cli/new/starter.ts';
import { chosen, templates } from '../../../src/cli/templates.ts';
import { scripted } from './scripted.ts';

let folder = '';
let said = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  said = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    said += String(text);
    return true;
  });
});

afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

async function starterOf(name: string) {
  const made = await starterIn(folder, chosen(name, await templates()));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

describe('questions', () => {
  it('ask those again whose answers do not go together, name them, and keep the rest', async () => {
    const ask = scripted([
      [/called/u, 'Tern'],
      [/Artwork/u, '8 x 10'],
      [/known of the size/u, 'outer'],
      [/Outer size/u, '5 x 5', '14 x 18'],
    ]);
    const made = await byQuestions(await starterOf('single'), {}, { out: join(folder, 'a.yaml') }, ask);
    expect(made.started.text).toContain('outer: 14 x 18');
    expect(made.started.text).toContain('title: Tern');
    expect(ask.asked.filter(({ question }) => /called/u.test(question))).toHaveLength(1);
    expect(ask.asked.filter(({ question }) => /Outer size/u.test(question))).toHaveLength(2);
    expect(said).not.toContain('a.yaml');
  });

  it('say what is wrong with an answer and ask it again; sizes that no board holds may be mm', async () => {
    const ask = scripted([
      [/called/u, 'Tern'],
      [/Artwork/u, '120 x 170', 'ten', '120 x 170 mm'],
      [/known of the size/u, 'border'],
      [/^Border/u, '2,5', '2.5'],
    ]);
    const made = await byQuestions(await starterOf('single'), {}, { out: join(folder, 'a.yaml') }, ask);
    const refused = ask.asked.flatMap((each) => each.refused);
    expect(refused[0]).toContain('did you mean mm? write 120 x 170 mm');
    expect(refused[1]).toContain('is not a size');
    expect(refused[2]).toContain('decimal comma');
    expect(made.started.text).toContain('artwork: 120 x 170 mm');
  });

  it('ask for another name where a file of that name is there', async () => {
    writeFileSync(join(folder, 'a.yaml'), 'kept');
    writeFileSync(join(folder, 'b.yaml'), 'kept');
    const ask = scripted([
      [/called/u, 'Tern'],
      [/is there already/u, join(folder, 'b.yaml'), join(folder, 'c.yaml')],
    ]);
    const made = await byQuestions(await starterOf('single'), {}, { out: join(folder, 'a.yaml') }, ask);
    expect(made.file).toBe(join(folder, 'c.yaml'));
  });

  it('offer the boards of the shop with their colours, take its unit and its only head', async () => {
    writeFileSync(
      join(folder, 'shop.yaml'),
      'units: mm\nboards: {ash: {name: Ash, thickness: 1.4, colour: "#aabbcc"}}\nheads: {pull: {bevel: 45}}\n',
    );
    const ask = scripted([
      [/called/u, 'Tern'],
      [/Board of the top mat/u, 'ash'],
    ]);
    const made = await byQuestions(await starterOf('double'), {}, { out: join(folder, 'a.yaml') }, ask);
    expect(made.started.text).toContain('units: mm');
    expect(made.started.text).toContain('board: ash');
    expect(made.started.text).toContain('head: pull');
    expect(made.started.text).toContain('name: Slate');
    expect(ask.asked.map(({ question }) => question)).not.toContain('In which unit are the sizes?');
  });

  it('ask how many openings, and for the artwork of each', async () => {
    const ask = scripted([
      [/called/u, 'Row'],
      [/How many openings/u, '2'],
      [/Artwork of opening 1/u, '4 x 6'],
      [/Artwork of opening 2/u, '5 x 7'],
      [/known of the size/u, 'border'],
      [/^Border/u, '2'],
    ]);
    const made = await byQuestions(await starterOf('single'), {}, { out: join(folder, 'a.yaml') }, ask);
    expect(made.started.text).toContain('artwork: 4 x 6');
    expect(made.started.text).toContain('artwork: 5 x 7');
  });
});
