/** Black on white: it is printed, and read at the bench. Grey says nothing that words do not say. */
export const STYLE = `
:root { color-scheme: light; font: 16px/1.4 system-ui, sans-serif; }
body { margin: 0 auto; max-width: 64rem; padding: 1rem; color: #111; background: #fff; }
h1 { font-size: 1.6rem; margin: 0; }
h2 { font-size: 1.15rem; margin: 0 0 .25rem; }
p { margin: .25rem 0; }
a { color: #0b4a8f; }
a:focus-visible { outline: 3px solid #0b4a8f; outline-offset: 2px; }
.papers { list-style: none; display: flex; flex-wrap: wrap; gap: .25rem 1.5rem; padding: 0; margin: .75rem 0; font-size: 1.1rem; }
section, article { border-top: 1px solid #777; padding: 1rem 0; }
.wrong { border: 2px solid #111; padding: .75rem 1rem; margin: 1rem 0; }
.wrong li, .warned li { overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .2rem .75rem .2rem 0; border-bottom: 1px solid #bbb; }
tbody th { font-weight: 600; white-space: nowrap; }
article { display: grid; grid-template-columns: minmax(8rem, 15rem) 1fr; gap: 1.25rem; }
.face img { display: block; max-width: 100%; max-height: 15rem; margin: 0 auto; }
.for { color: #333; }
.whole { white-space: nowrap; }
dl { margin: .5rem 0; display: grid; gap: .15rem; }
dl div { display: grid; grid-template-columns: 9.5rem 1fr; gap: .5rem; }
dt { color: #333; }
dd { margin: 0; font-weight: 600; }
.warned { margin: .5rem 0; padding-left: 1.1rem; }
.files { display: flex; flex-wrap: wrap; gap: .1rem .8rem; }
@media (max-width: 40rem) {
  article { grid-template-columns: 1fr; }
  dl div { grid-template-columns: 1fr; gap: 0; }
}
@page { margin: 14mm; }
@media print {
  :root { font-size: 10.5pt; }
  body { max-width: none; padding: 0; }
  a { color: inherit; text-decoration: none; }
  article, .wrong, tr { break-inside: avoid; }
  h1, h2 { break-after: avoid; }
  .files { display: none; }
  article { grid-template-columns: 4.6cm 1fr; padding: .4cm 0; }
  .face img { max-height: 5.2cm; }
}
`;
