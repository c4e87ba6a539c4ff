/** What `dist/cli.js` loads once it knows that this Node will do. */
import '../node.ts';
import { main } from './main.ts';

/** Of the package; the build fills it in. */
declare const VERSION: string;

/** The exit code, for whoever runs it in a process that goes on. */
export const ended = main(process.argv.slice(2), VERSION).then((code) => {
  process.exitCode = code;
  return code;
});
