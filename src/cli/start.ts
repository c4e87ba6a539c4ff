/** What `dist/cli.js` loads once it knows that this Node will do. */
import '../node.ts';
import { main } from './main.ts';

/** Of the package; the build fills it in. */
declare const VERSION: string;

main(process.argv.slice(2), VERSION).then((code) => {
  process.exitCode = code;
});
