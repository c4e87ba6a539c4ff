/** The command was called wrongly, or a file that it names cannot be read: exit 2, one plain line. */
export class UsageError extends Error {}
