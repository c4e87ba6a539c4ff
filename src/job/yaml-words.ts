export interface Words {
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

const INDENT: Words = {
  code: 'yaml-indent',
  message: 'this line is indented otherwise than its neighbours',
  hint: 'keys that belong together begin in the same column',
};

/** What the parser's error codes mean, in plain words. */
const WORDS: Readonly<Record<string, Words>> = {
  ALIAS_PROPS: { code: 'yaml-alias', message: 'an alias cannot have an anchor or a tag', hint: 'write the value out' },
  BAD_ALIAS: { code: 'yaml-alias', message: 'this alias names no value above', hint: 'write the value out' },
  BAD_DIRECTIVE: {
    code: 'yaml-directive',
    message: 'the file has a YAML directive',
    hint: 'take the line that begins with % out',
  },
  BAD_DQ_ESCAPE: {
    code: 'yaml-escape',
    message: 'a backslash in double quotes begins an unknown escape',
    hint: 'write two backslashes, or use single quotes',
  },
  BAD_INDENT: INDENT,
  BAD_PROP_ORDER: { code: 'yaml-tag', message: 'an anchor or a tag stands in the wrong place', hint: 'take it out' },
  BAD_SCALAR_START: {
    code: 'yaml-quotes',
    message: 'a value cannot begin with this character',
    hint: 'put the value in quotes',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    code: 'yaml-indent',
    message: 'two keys stand on one line',
    hint: 'give each key its own line, or put a value that holds ": " in quotes',
  },
  BLOCK_IN_FLOW: {
    code: 'yaml-brackets',
    message: 'an indented list or map stands within brackets',
    hint: 'write it with brackets too',
  },
  KEY_OVER_1024_CHARS: { code: 'key-too-long', message: 'a key is longer than 1024 characters', hint: 'shorten it' },
  MISSING_CHAR: { code: 'yaml-brackets', message: 'a bracket, comma, colon or quote is missing', hint: '' },
  MULTILINE_IMPLICIT_KEY: {
    code: 'yaml-colon',
    message: 'a key runs over several lines',
    hint: 'each key needs a colon and a space after it: key: value',
  },
  MULTIPLE_ANCHORS: { code: 'yaml-alias', message: 'a value has two anchors', hint: 'keep one' },
  MULTIPLE_DOCS: { code: 'yaml-documents', message: 'the file holds several documents', hint: 'keep one to a file' },
  MULTIPLE_TAGS: { code: 'yaml-tag', message: 'a value has two tags', hint: 'take them out' },
  TAB_AS_INDENT: { code: 'yaml-tab', message: 'a tab stands where the line is indented', hint: 'indent with spaces' },
  TAG_RESOLVE_FAILED: { code: 'yaml-tag', message: 'a tag stands before the value', hint: 'take the tag out' },
  BAD_COLLECTION_TYPE: { code: 'yaml-tag', message: 'a tag stands before the value', hint: 'take the tag out' },
};

const UNREADABLE: Words = {
  code: 'yaml-unreadable',
  message: 'this cannot be read as YAML',
  hint: 'each key needs a colon and a space after it, and values of one map begin in the same column',
};

export function wordsFor(code: string, _message: string): Words {
  return WORDS[code] ?? UNREADABLE;
}
