import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import { check, described, line, needed, record } from '../read/fields/fields.ts';

/** What a shop puts on the papers that customers see. */
export interface Letterhead {
  readonly name: string;
  /** Below one another, as on an envelope. */
  readonly address: readonly string[];
  /** The file of its mark, relative to that of the shop. */
  readonly mark?: string;
}

/** An envelope has no more lines than that, and a label no room for them. */
const MOST_LINES = 6;

export function letterheadSchema() {
  const about = 'A line of its address: street, town, telephone, mail';
  const address = z.array(line(about, ['3 Quay Lane'], 80), 'a list of lines').check(
    check((lines: readonly string[]) =>
      lines.length <= MOST_LINES
        ? undefined
        : {
            code: 'address-lines',
            message: `the address has ${lines.length} lines`,
            hint: `keep it to ${MOST_LINES}, several things to a line`,
          },
    ),
  );
  const head = record(
    {
      name: needed(line('The shop’s name', ['Saltmarsh Print Room'], 80)),
      address: z.optional(
        described(address, 'Lines of its address', [['3 Quay Lane', 'Saltmarsh']], { maxItems: MOST_LINES }),
      ),
      mark: z.optional(
        line('Its mark, an SVG of plain areas, a JPEG or a PNG: a file beside the shop’s', ['mark.svg'], 1000),
      ),
    },
    'a map: name, address, mark',
  );
  return described(head, 'The shop itself, for proofs, intake forms and labels on backs', [
    { name: 'Saltmarsh Print Room', address: ['3 Quay Lane', 'Saltmarsh'] },
  ]);
}

export const letterheadFrom = ({
  name,
  address = [],
  mark,
}: z.output<ReturnType<typeof letterheadSchema>>): Letterhead => ({ name, address, ...defined({ mark }) });
