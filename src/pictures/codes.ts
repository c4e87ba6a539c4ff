import { type Codes, entry } from '../problems/code-entry.ts';

/** Every code that pictures can end with. */
export const CODES: Codes = {
  'mark-svg': entry(
    'A shop’s mark holds more than plain areas, or its file is damaged.',
    'Make filled paths of everything, or save it as a PNG.',
  ),
  'picture-broken': entry('A picture’s file is damaged.', 'Save it again.'),
  'picture-cmyk': entry(
    'A picture is in printing colours, which only their own profile could show.',
    'Save it in sRGB.',
  ),
  'picture-empty': entry('A picture has no pixels, or its file holds nothing.', 'Check that it is the right file.'),
  'picture-kind': entry('A file is no JPEG or PNG, or one of a kind that is not read.', 'Save it as JPEG or PNG.'),
  'picture-large': entry('A picture has too many pixels, or its file too many bytes.', 'Save it smaller.'),
  'picture-name': entry('A picture’s file is named as another kind than it is.', 'Rename it.'),
  'picture-profile': entry('A picture has a colour profile that is not followed.', 'Save it in sRGB for true colours.'),
};
