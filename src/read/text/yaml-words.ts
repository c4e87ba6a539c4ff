/** What is wrong in plain words. */
export interface Words {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

const BRACKETS: Words = {
  code: 'yaml-brackets',
  message: 'a comma or a colon is missing here, or one stands too many',
  hint: 'within brackets write {key: value, key: value} or [value, value]',
};

const TAG: Words = { code: 'yaml-tag', message: 'a tag or an anchor stands in the wrong place', hint: 'take it out' };

const INDENT: Words = {
  code: 'yaml-indent',
  message: 'this line is indented otherwise than its neighbours',
  hint: 'keys that belong together begin in the same column, and what belongs to a key is indented deeper',
};

/** What the library's error codes mean. */
const WORDS: Readonly<Record<string, Words>> = {
  ALIAS_PROPS: TAG,
  BAD_ALIAS: { code: 'yaml-alias', message: 'this alias or anchor has no name', hint: 'write the value out' },
  BAD_INDENT: INDENT,
  BAD_PROP_ORDER: TAG,
  BAD_SCALAR_START: {
    code: 'yaml-quotes',
    message: 'a value cannot begin with this character',
    hint: 'put the value in quotes',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    code: 'yaml-colon',
    message: 'a second key stands on this line',
    hint: 'give each key its own line, or put a text that holds ": " in quotes',
  },
  BLOCK_IN_FLOW: BRACKETS,
  COMMENT_BEHIND_TEXT: {
    code: 'yaml-comment',
    message: 'what follows this # is a comment and no part of the text',
    hint: 'put the text in quotes if it is part of it, or a space behind the #',
  },
  KEY_OVER_1024_CHARS: { code: 'key-too-long', message: 'a key is longer than 1024 characters', hint: 'shorten it' },
  MISSING_CHAR: {
    code: 'yaml-colon',
    message: 'a colon, a hyphen or a space is missing here',
    hint: 'write key: value, with a space after the colon and before a #',
  },
  MULTILINE_IMPLICIT_KEY: {
    code: 'yaml-colon',
    message: 'this line has no colon after its key',
    hint: 'write key: value; a text that runs over several lines stands in quotes',
  },
  MULTIPLE_ANCHORS: TAG,
  MULTIPLE_DOCS: { code: 'yaml-documents', message: 'the file holds several documents', hint: 'keep one to a file' },
  MULTIPLE_TAGS: TAG,
  TAB_AS_INDENT: { code: 'yaml-tab', message: 'a tab stands where the line is indented', hint: 'indent with spaces' },
  TAG_RESOLVE_FAILED: TAG,
  BAD_COLLECTION_TYPE: TAG,
};

const UNREADABLE: Words = {
  code: 'yaml-unreadable',
  message: 'something stands here that YAML does not allow',
  hint: 'put a text with quotes, brackets or other signs in single quotes',
};

export function wordsFor(code: string, message: string): Words {
  if (code === 'MISSING_CHAR' && / items$| in flow /.test(message)) return BRACKETS;
  if (code === 'UNEXPECTED_TOKEN' && /^Unexpected (?:,|empty item) /.test(message)) return BRACKETS;
  return WORDS[code] ?? UNREADABLE;
}
