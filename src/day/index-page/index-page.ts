import { size } from '../../documents/proof/words.ts';
import { FACE } from '../../outputs/face.ts';
import type { Problem } from '../../problems/problem.ts';
import { showProblem } from '../../problems/show.ts';
import { showDay } from '../../read/fields/day.ts';
import { toFetch } from './fetch.ts';
import { address, type Html, html, NOTHING, pictureAddress, where } from './html.ts';
import type { Index, IndexedJob } from './model.ts';
import { STYLE } from './style.ts';

/**
 * One page that shows a day's jobs, part by part: it holds all that it needs, pictures too, asks nothing of a network and
 * runs no script.
 */
export function* indexPage(index: Index): Generator<string> {
  const { title, date, jobs, count } = index;
  yield html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${{ html: STYLE }}</style>
</head>
<body>
<header>
<h1>${title}</h1>
<p>${count === 1 ? 'One job' : `${count} jobs`}${where(date, (day) => html`, ${day}`)}${partOf(index)}</p>
${papers(index)}
</header>
<main>
${leftOut(index)}
${index.page === 0 ? fetchList(jobs, index.pages.length > 1) : NOTHING}
`.html;
  for (const job of jobs) yield jobPart(job).html;
  yield '\n</main>\n</body>\n</html>\n';
}

function partOf({ pages, page }: Index): Html {
  if (pages.length === 1) return NOTHING;
  const links = pages.map((name, i) =>
    i === page ? html` <b aria-current="page">${i + 1}</b>` : html` <a href="${address(name)}">${i + 1}</a>`,
  );
  return html`, page${links} of ${pages.length}`;
}

const papers = ({ papers: files }: Index): Html =>
  files.length === 0
    ? NOTHING
    : html`<nav aria-label="For all jobs together"><ul class="papers">${files.map(
        ({ file, pages }) =>
          html`<li><a href="${address(file)}">${file}</a> ${pages === 1 ? 'one page' : `${pages} pages`}</li>`,
      )}</ul></nav>`;

const leftOut = ({ problems }: Index): Html =>
  problems.length === 0
    ? NOTHING
    : html`<section class="wrong" aria-labelledby="wrong"><h2 id="wrong">Not made, or to be looked at</h2>
<ul>${problems.map((problem) => html`<li>${showProblem(problem)}</li>`)}</ul></section>`;

function fetchList(jobs: readonly IndexedJob[], more: boolean): Html {
  const rows = toFetch(jobs);
  if (rows.length === 0) return NOTHING;
  return html`<section class="fetch" aria-labelledby="fetch"><h2 id="fetch">To fetch${more ? ' for this page' : ''}</h2>
<table><thead><tr><th scope="col">What</th><th scope="col">Pieces</th><th scope="col">Sizes</th></tr></thead>
<tbody>${rows.map(
    ({ what, count, sizes }) => html`<tr><th scope="row">${what}</th><td>${count}</td><td>${listed(sizes)}</td></tr>`,
  )}</tbody></table></section>`;
}

function jobPart({ report, number, due, folder, files, sheets, warnings, face }: IndexedJob): Html {
  const { title, customer, count } = report;
  const name = number === undefined ? title : `${number} ${title}`;
  const said = [
    ...(customer === undefined ? [] : [customer]),
    ...(due === undefined ? [] : [`due ${showDay(due)}`]),
    ...(count === 1 ? [] : [`${count} alike`]),
    sheets === 1 ? 'one sheet' : `${sheets} sheets`,
  ];
  const proof = files.find((file) => file === 'proof.pdf');
  const picture = where(face, (svg) => html`<img src="${{ html: pictureAddress(svg) }}" alt="${title}, framed">`);
  return html`<article>
<div class="face">${proof === undefined ? picture : html`<a href="${way(folder, proof)}">${picture}</a>`}</div>
<div class="said">
<h2>${name}</h2>
<p class="for">${said.join(', ')}</p>
<dl>${sizesOf(report).map(([term, said]) => html`<div><dt>${term}</dt><dd>${listed(said)}</dd></div>`)}</dl>
${warnings.length === 0 ? NOTHING : html`<ul class="warned">${warnings.map((warning) => html`<li>${wordsOf(warning)}</li>`)}</ul>`}
<p class="files">${files.filter((file) => file !== FACE).map((file) => html`<a href="${way(folder, file)}">${file}</a> `)}</p>
</div>
</article>
`;
}

/** Each whole on its line: a size that is broken is read wrong. */
const listed = (texts: readonly string[]): readonly Html[] =>
  texts.map((text, i) => html`${i === 0 ? '' : ', '}<span class="whole">${text}</span>`);

const way = (folder: string, file: string): string => address(`${folder}/${file}`);

/** The file is the job's own, which stands above. */
const wordsOf = (warning: Problem): string => {
  const { file: _file, ...own } = warning;
  return showProblem({ ...own, file: 'warning' }).replace('warning: ', '');
};

function sizesOf({
  units,
  outer,
  layers,
  openings,
  glazing,
  backing,
}: IndexedJob['report']): readonly (readonly [string, readonly string[]])[] {
  const several = openings.length > 1;
  const alike = new Map<string, number>();
  for (const { sight } of openings) {
    const said = size(sight, units);
    alike.set(said, (alike.get(said) ?? 0) + 1);
  }
  const seen = [...alike].map(([said, times]) => (times === 1 ? said : `${times} × (${said})`));
  return [
    ['Outer', [size(outer, units)]],
    [several ? 'Openings, in sight' : 'Opening, in sight', seen],
    ...layers.map(({ name, board, blank }): readonly [string, readonly string[]] => [
      name.charAt(0).toUpperCase() + name.slice(1),
      [board, `blank ${size(blank, units)}`],
    ]),
    ['Glazing', [size(glazing, units)]],
    ['Backing', [size(backing, units)]],
  ];
}
