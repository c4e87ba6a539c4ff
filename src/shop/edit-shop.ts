import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { word } from '../problems/quoted.ts';
import { showPath } from '../problems/show.ts';
import { type Edit, edited } from '../read/edit/edit.ts';

export type { Edit } from '../read/edit/edit.ts';

/** The text of a shop's file with some values changed; it must be one that `readShop` takes. Errors: `shop-not-editable`. */
export function editShop(text: string, file: string, edits: readonly Edit[]): Result<string> {
  const made = edited(text, edits);
  if ('text' in made) return succeed(made.text);
  const { path } = made.refused;
  const message = `${word(showPath(path))} is written in a way that cannot be changed without touching the rest`;
  const hint = 'write that part out, one key a line and without anchors, and try again; nothing was changed';
  return fail([{ ...error('shop-not-editable', path, message, hint), file }]);
}
