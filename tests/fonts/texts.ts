import fc from 'fast-check';
import { tables } from '../../src/fonts/prepared/tables.ts';

const prepared = tables.filter((table) => table.weight === 'regular').flatMap((table) => table.codePoints);

/** Texts of prepared characters, both those of the family and those that it borrows. */
export const preparedText = (maxLength = 40): fc.Arbitrary<string> =>
  fc
    .array(fc.constantFrom(...prepared), { maxLength })
    .map((codePoints) => String.fromCodePoint(...codePoints).normalize('NFC'));

/** Words of a few letters with spaces, hyphens and line breaks between. */
export const prose: fc.Arbitrary<string> = fc
  .array(
    fc.constantFrom('a', 'Heron', 'overlap', 'lino-cut', 'W', 'Ґрати', '16½″', '\u00a0', ' ', ' ', ' ', '  ', '\n'),
    {
      maxLength: 40,
    },
  )
  .map((parts) => parts.join(''));

export const weight = fc.constantFrom('regular' as const, 'bold' as const);
