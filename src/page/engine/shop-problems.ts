import { readShop } from '../../shop/read-shop.ts';
import type { Asks } from './answers.ts';

export async function shopProblems(source: Asks['shop']['request']): Promise<Asks['shop']['answer']> {
  const read = readShop(source);
  return { problems: read.ok ? read.warnings : read.problems };
}
