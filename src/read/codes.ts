import { type Codes, entry } from '../problems/code-entry.ts';

/** The text as a whole. */
const TEXT = {
  'text-too-long': entry('The file is larger than 256 KiB.', 'Check that it is the right file.'),
  'text-too-deep': entry('Lists and maps nest deeper than 64.', 'Check that it is the right file.'),
  'text-too-many-values': entry('The file holds more values than any job or shop.', 'Check that it is the right file.'),
  'text-not-text': entry('The file holds a NUL, so it is no plain text.', 'Save it as plain text in UTF-8.'),
  'text-not-utf-8': entry('The file holds bytes that are not UTF-8.', 'Save it as plain text in UTF-8.'),
  'text-control': entry('The file holds an invisible control character.', 'Take it out at the place that is named.'),
  'problems-more': entry('There are more problems than are worth telling at once.', 'Mend the first ones, look again.'),
};

const YAML = {
  'yaml-indent': entry(
    'A line is indented otherwise than its neighbours.',
    'Begin keys that belong together in one column.',
  ),
  'yaml-tab': entry('A line is indented by a tab.', 'Indent with spaces.'),
  'yaml-colon': entry('A key has no colon and space after it, or a line has two.', 'Write `key: value`, one a line.'),
  'yaml-brackets': entry(
    'Brackets do not match, or a comma within them is missing.',
    'Write `{key: value}` or `[value, value]`.',
  ),
  'yaml-quotes': entry(
    'A quote is never closed, or a text needs quotes.',
    "Put a text with signs in single quotes: `'5/8\"'`.",
  ),
  'yaml-escape': entry(
    'A backslash in double quotes begins no known escape.',
    'Write two backslashes, or use single quotes.',
  ),
  'yaml-tag': entry('A tag (`!`) or an anchor stands before a value.', 'Take it out.'),
  'yaml-alias': entry('An alias (`*name`) names no value above, or its own.', 'Write the value out.'),
  'yaml-merge': entry('A merge key (`<<`) stands in a map.', 'Write the keys out.'),
  'yaml-comment': entry(
    'A # right behind a text begins a comment.',
    'Put the text in quotes, or a space behind the #.',
  ),
  'yaml-directive': entry('A line begins with `%`.', 'Take it out.'),
  'yaml-documents': entry('The file holds several documents.', 'Keep one job or shop to a file.'),
  'yaml-unreadable': entry(
    'Something stands there that YAML does not allow.',
    'Put texts with signs in single quotes.',
  ),
};

const JSON_TEXT = {
  'json-after': entry('Something follows the end of the JSON.', 'Take it out.'),
  'json-brackets': entry('A bracket is never closed.', 'Close it.'),
  'json-colon': entry('A colon is missing after a key.', 'Write `"key": value`.'),
  'json-comma': entry('A comma is missing, or one stands before a closing bracket.', 'Put one between items only.'),
  'json-comment': entry('JSON has no comments.', 'Take it out, or write the job as YAML.'),
  'json-escape': entry('A backslash begins no known escape.', 'Write two backslashes for one.'),
  'json-quotes': entry('A text has no double quotes, or no closing one.', 'Put texts and keys in double quotes.'),
  'json-value': entry('This is no JSON value.', 'Put texts, and lengths such as 1/4, in double quotes.'),
};

/** Keys and the kinds of their values. */
const KEYS = {
  'key-unknown': entry('There is no such key here.', 'Take the nearest known one, which the message names.'),
  'key-missing': entry('A key that is needed is missing.', 'Give it.'),
  'key-twice': entry('A key stands twice in a map.', 'Keep one of the two.'),
  'key-not-text': entry('A key is no plain text.', 'Put a key that looks like a number in quotes.'),
  'key-unusable': entry(
    'A name of the shop’s, as a key, has characters that names cannot have.',
    'Use letters, digits, dots, hyphens.',
  ),
  'key-too-long': entry('A key is longer than 1024 characters.', 'Shorten it.'),
  'value-missing': entry('A key has no value; null is never one.', 'Give it, or take the key out.'),
  'value-kind': entry('A value is of the wrong kind, such as a list for a text.', 'Write it as the message says.'),
  'value-unknown': entry('A word is none of the allowed ones.', 'Take one that the message lists.'),
  'number-not-finite': entry('A number is infinite or none at all.', 'Write a plain number.'),
  'number-range': entry('A number is too small or too large.', 'Keep to the bounds that the message names.'),
  'text-missing': entry('A text is empty.', 'Write it, or take the key out.'),
  'text-line': entry('A text holds a line break or an invisible character.', 'Keep it to one plain line.'),
  'text-line-long': entry('A text is longer than 200 characters.', 'Shorten it.'),
  'id-unusable': entry('A name has characters that names cannot have.', 'Use letters, digits, dots, hyphens.'),
  'colour-unreadable': entry(
    'A colour is not `#` and six hexadecimal digits.',
    'Write for example `"#efe9dc"`, in quotes.',
  ),
  'day-unreadable': entry('A text is no day of the calendar.', 'Write year-month-day: `2031-03-12`.'),
  'ratio-unreadable': entry('A ratio is no number and no fraction.', 'Write for example `4/3`.'),
};

const LENGTHS = {
  'length-decimal-comma': entry('A length has a decimal comma.', 'Write a decimal point.'),
  'length-empty': entry('A length is missing.', 'Write for example `16 1/2` or `419 mm`.'),
  'length-unreadable': entry('A text is no length.', 'Write for example `16 1/2` or `419 mm`.'),
  'length-control': entry('A length holds an invisible character.', 'Type it again.'),
  'length-too-long': entry('A text is far too long for a length.', 'Write for example `16 1/2` or `419 mm`.'),
  'length-zero-denominator': entry('A fraction divides by zero.', 'Write for example `1/2`.'),
  'length-improper': entry('A whole number is followed by a fraction of one or more.', 'Write `17 1/2` for `16 3/2`.'),
  'length-negative': entry('A length is negative where it cannot be.', 'Write it without a sign.'),
  'length-zero': entry('A length is zero where it cannot be.', 'Give it, or take the key out.'),
  'length-small': entry('A length is too small to be meant.', 'Check its unit.'),
  'length-large': entry('A length is too large to be meant; nothing is over 5 m.', 'Check its unit.'),
  'size-unreadable': entry('A text is no size.', 'Write width x height: `10 1/2 x 13 1/2`.'),
  'size-too-long': entry('A text is far too long for a size.', 'Write width x height: `10 1/2 x 13 1/2`.'),
  'size-unit': entry('The width has a unit, the height none.', 'Write the unit after the height.'),
  'sides-twice': entry('A side is given by itself and by `sides`.', 'Keep one of the two.'),
};

const EDITS = {
  'field-not-editable': entry(
    'A field of a text cannot be set or cleared without touching the rest.',
    'Write that part out, one key a line, without anchors.',
  ),
};

/** Every code of a problem that reading can tell, whatever is read. None is loaded with the reader. */
export const CODES: Codes = { ...TEXT, ...YAML, ...JSON_TEXT, ...KEYS, ...LENGTHS, ...EDITS };
