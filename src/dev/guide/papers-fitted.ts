import { findPaper } from '../../papers/find.ts';

/** By how much a page of one paper is made smaller to go on another. */
export function fitted(from: string, to: string): number {
  const [a, b] = [from, to].map((name) => {
    const paper = findPaper(name);
    if (!paper.ok || paper.value.kind !== 'sheet') throw new Error(`${name} is no sheet of paper`);
    return paper.value;
  });
  return Math.min(b!.width / a!.width, b!.height / a!.height);
}
