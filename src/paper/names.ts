/** Rows are letters from the top (A … Z, AA …), columns are numbers from the left, both from 0 here. */
export function sheetName(row: number, column: number): string {
  return `${rowLetters(row)}${column + 1}`;
}

function rowLetters(row: number): string {
  const last = String.fromCharCode('A'.charCodeAt(0) + (row % 26));
  return row < 26 ? last : rowLetters(Math.floor(row / 26) - 1) + last;
}
