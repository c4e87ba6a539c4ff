/** A mark in the ways in which drawing programs write one: style sheet, groups that are turned, both rules of filling, names of their own. */
export const MARK = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">
<!-- reeds over water -->
<svg xmlns="http://www.w3.org/2000/svg" xmlns:own="http://example.org/own" width="40mm" height="30mm" viewBox="-20 -10 120 90">
  <title>Reeds &amp; tide</title>
  <own:view zoom="3"/>
  <style>/* two inks */ .water, .reed{fill:#1d4e63} .sun{fill:rgb(200, 80, 45)}</style>
  <g transform="translate(2 2) rotate(-3 40 30)" own:label="all">
    <circle class="sun" cx="56" cy="16" r="12"/>
    <path class="water" d="M0 44c10-6 18-6 26 0s16 6 26 0 16-6 24 0v6c-8-6-14-6-24 0s-16 6-26 0-16-6-26 0z"/>
    <path style="fill:#1d4e63;stroke:none" d="M14 42 L18 4 L20 4 L18 42 Z M24 42 L34 8 L36 8 L28 42Z"/>
    <rect class="water" x="2" y="54" width="70" height="3" rx="1.5"/>
    <path fill="black" d="M60 26h18v16h-18z M62 28h14v12h-14z"/>
    <path fill="#000" fill-rule="evenodd" d="M44 30h8v8h-8z M46 32h4v4h-4z"/>
    <g transform="matrix(1 0 .3 1 0 0) scale(1 .8)" fill="#a33"><ellipse cx="4" cy="36" rx="3" ry="6"/>
      <polygon points="-8,10 -2,10 -5,20"/><path d="M-8 24a3 2 30 1 0 5 3q4 4 3-4t2-3z"/></g>
    <path d="M0 0h9v9z" fill="none"/><rect width="80" height="60" display="none"/>
  </g>
</svg>
`;
