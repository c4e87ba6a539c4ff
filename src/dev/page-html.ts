/** What stands in the file of the page, by the element that holds it. */
export interface PageParts {
  readonly policy: string;
  readonly style: string;
  readonly templates: string;
  readonly engine: string;
  readonly press: string;
  readonly guide: string;
  readonly script: string;
}

/**
 * The page's one file. Only the last script runs; the workers' are texts until they are asked for. `shop`, `pieces` and
 * `served` are empty elements for whoever writes the file with a shop and jobs in it, or serves it.
 */
export const pageHtml = ({
  policy,
  style,
  templates,
  engine,
  press,
  guide,
  script,
}: PageParts): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Matwright</title>
<link rel="icon" href="data:,">
<style>${style}</style>
</head>
<body>
<div id="page"></div>
<div id="print" class="print"></div>
<noscript>This page works by JavaScript, all of which is in this file.</noscript>
<script type="application/json" id="templates">${templates}</script>
<script type="application/json" id="shop">null</script>
<script type="application/json" id="pieces">[]</script>
<script type="application/json" id="served">null</script>
<script type="text/plain" id="engine">${engine}</script>
<script type="text/plain" id="press">${press}</script>
<script type="text/plain" id="guide">${guide}</script>
<script>${script}</script>
</body>
</html>
`;
