import { describe, expect, it } from 'vitest';
import { indexPage } from '../../src/day/index-page/index-page.ts';
import type { Index, IndexedJob } from '../../src/day/index-page/model.ts';
import { type Problem, solveJob } from '../../src/index.ts';

const job = (title: string, more: Partial<IndexedJob> = {}): IndexedJob => {
  const text = `title: ${JSON.stringify(title)}\ncount: 2\nunits: in\nmat: {outer: 11 x 14, layers: [{}, {reveal: 1/4}]}\nopenings: [{artwork: 8 x 10}]\n`;
  const solved = solveJob(text);
  if (!solved.ok) throw new Error('not solved');
  return {
    report: solved.value.report,
    folder: 'heron',
    files: ['proof.pdf', 'ticket.pdf'],
    sheets: 2,
    warnings: [],
    ...more,
  };
};
const page = (more: Partial<Index> = {}): string =>
  [
    ...indexPage({
      title: 'Day',
      papers: [],
      jobs: [job('Heron')],
      count: 1,
      pages: ['index.html'],
      page: 0,
      problems: [],
      ...more,
    }),
  ].join('');

const problem = (message: string): Problem => ({
  severity: 'error',
  code: 'day-stock',
  path: [],
  message,
  hint: '',
  file: 'a.yaml',
});

describe('the index of a day', () => {
  it('asks nothing of anywhere, and runs nothing', () => {
    const text = page({
      jobs: [job('Heron', { face: '<svg xmlns="http://www.w3.org/2000/svg"><title>50 % "#1"</title></svg>' })],
    });
    expect(text).not.toMatch(/<script|<link|@import|url\(|\bon\w+=|(?:src|href)="(?!data:image|heron\/)/u);
    const [, picture = ''] = /src="(data:image\/svg\+xml,[^"]*)"/u.exec(text) ?? [];
    expect(decodeURIComponent(picture)).toContain('<title>50 % "#1"</title>');
  });

  it('lets nothing that somebody wrote become part of the page', () => {
    const text = page({
      jobs: [
        job(`</h2><b>"'&`, { folder: '50% #1?/"x', warnings: [{ ...problem('<i>odd</i>'), severity: 'warning' }] }),
      ],
      problems: [problem('</section>')],
    });
    expect(text).toContain('&lt;/h2&gt;&lt;b&gt;&quot;&#39;&amp;');
    expect(text).not.toMatch(/<b>|<i>/u);
    expect(text.match(/<\/section>/gu)).toHaveLength(2);
    expect(text).toContain('href="50%25%20%231%3F/%22x/proof.pdf"');
  });

  it('counts what is to be fetched, the pieces of all jobs together', () => {
    const text = page({ jobs: [job('Heron'), job('Terns')], count: 2 }).replaceAll(/<[^>]*>/gu, '|');
    expect(text).toMatch(/\|Board [^|]*\|+8\|+4 of 11 × 14 in\|, \|4 of 10¾ × 13¾ in\|/u);
    expect(text).toMatch(/\|Glazing\|+4\|+4 of 11 × 14 in\|/u);
  });

  it('breaks no size over two lines', () => {
    const text = page();
    expect(text).toMatch(/\.whole \{ white-space: nowrap; \}/u);
    const sizes = text.match(/[^>]* × [^<]*/gu) ?? [];
    expect(sizes).toHaveLength(10);
    for (const size of sizes) expect(text).toContain(`<span class="whole">${size}</span>`);
  });

  it('names number, customer, day, sheets, files, warnings and the other pages', () => {
    const text = page({
      jobs: [
        job('Heron', {
          number: 'A-07',
          due: '2031-03-12',
          warnings: [{ ...problem('thin border'), severity: 'warning', line: 3 }],
        }),
      ],
      papers: [{ file: 'patterns.pdf', pages: 12 }],
      pages: ['index.html', 'index-2.html'],
      page: 1,
      date: '11 March 2031',
    });
    for (const words of ['A-07 Heron', 'due Wed 12 March 2031, 2 alike, 2 sheets', 'thin border', '11 March 2031'])
      expect(text).toContain(words);
    expect(text).toContain('<a href="patterns.pdf">patterns.pdf</a> 12 pages');
    expect(text).toContain('<a href="index.html">1</a> <b aria-current="page">2</b> of 2');
    expect(text).toContain('href="heron/ticket.pdf"');
  });
});
