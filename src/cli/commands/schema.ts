import { Argument, type Command } from 'commander';
import { jsonSchema, SCHEMA_KINDS, type SchemaKind } from '../../job/json-schema.ts';
import { printJson } from '../say.ts';

export function define(command: Command): void {
  command
    .addArgument(new Argument('<kind>', 'what the file describes').choices(SCHEMA_KINDS))
    .addHelpText(
      'after',
      `
The schema tells an editor the keys, their meaning and their examples. Save it once for a folder, and name it in the first line of a file:
  # yaml-language-server: $schema=job.schema.json

Example:
  matwright schema job > job.schema.json
`,
    )
    .action((kind: SchemaKind) => printJson(jsonSchema(kind)));
}
