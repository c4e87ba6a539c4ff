import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER = join(import.meta.dirname, '../../examples/monday');
const read = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

/** The day's jobs of the example, all on the shop's sheets. */
export const STOCK_CASES = [
  {
    name: 'stock-monday',
    file: 'monday',
    job: '',
    shop: read('shop.yaml'),
    day: Object.fromEntries(
      readdirSync(FOLDER)
        .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
        .sort()
        .map((name) => [name, read(name)]),
    ),
  },
];
