/** Numbers in the running words of the guide, by their names. */
const NUMBERS: Readonly<Record<string, () => string>> = {};

export function numberOf(name: string): string {
  const number = NUMBERS[name];
  if (number === undefined) throw new Error(`there is no number ${name}, only ${Object.keys(NUMBERS).join(', ')}`);
  return number();
}
