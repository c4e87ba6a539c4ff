import { expect, it } from 'vitest';
import { anchorOf, faultsOf } from '../../src/dev/guide/links.ts';

const PAGES = new Map([['b.md', '# B\n\n## In the other’s words, 2\n']]);
const around = (text: string) => ({
  top: '.',
  pages: new Map([...PAGES, ['a.md', text]]),
  pictures: new Set(['p.svg']),
  made: new Set(['pattern-1.pdf', 'monday/index.html', 'index.html']),
});
const faults = (text: string) => faultsOf('a.md', text, around(text));

it('takes what is there', () => {
  const text =
    '# A\n\n[b](b.md), [there](b.md#in-the-others-words-2), [here](#a), [all](../library.md), ![words](pictures/p.svg) ![w](../page.png)\n`pattern-1.pdf` `monday/index.html` `examples/heron/job.yaml` `--out`\n';
  expect(faults(text)).toEqual([]);
});

it.each([
  ['[b](c.md)', 'the link to c.md leads nowhere'],
  ['[b](b.md#elsewhere)', 'the link to b.md#elsewhere leads nowhere'],
  ['[b](https://example.org/)', 'the link to https://example.org/ leads nowhere'],
  ['![words](pictures/q.svg)', 'there is no picture pictures/q.svg'],
  ['![](pictures/p.svg)', 'pictures/p.svg has no words for who cannot see it'],
  ['`pattern-2.pdf`', 'there is no file pattern-2.pdf'],
  ['`tuesday/index.html`', 'there is no file tuesday/index.html'],
  ['`examples/heron/jobs.yaml`', 'there is no file examples/heron/jobs.yaml'],
])('finds %s', (text, fault) => {
  expect(faults(text)).toEqual([`a.md: ${fault}`]);
});

it('leaves what stands in blocks alone', () => {
  expect(faults('```yaml\n[a](nowhere.md) `none.pdf`\n```\n')).toEqual([]);
});

it('makes anchors as the places that show Markdown do', () => {
  expect(anchorOf('S and E, seen from the BACK')).toBe('s-and-e-seen-from-the-back');
});
