/** `npm run golden -- CASE…`: writes the references of these cases that fail. Without a case it only names what fails. */
import { nearest } from '../../src/problems/nearest.ts';
import { CASES } from './cases.ts';
import { compareCase, compareNames, showFailure } from './compare.ts';
import { makeCase } from './make.ts';
import { readReferences, referenceFolders, showFailures, writeReferences } from './store.ts';

const asked = process.argv.slice(2);
const names = CASES.map((each) => each.name);
const unknown = asked.filter((name) => !names.includes(name));

if (process.env.CI !== undefined) {
  console.error('References are written by a person who looks at them, never where CI is set.');
  process.exitCode = 2;
} else if (unknown.length > 0) {
  for (const name of unknown) {
    const near = nearest(name, names);
    console.error(`no case ${JSON.stringify(name)}${near === undefined ? '' : `; did you mean ${near}?`}`);
  }
  console.error(`there are: ${names.join(', ')}`);
  process.exitCode = 2;
} else {
  await update();
}

async function update(): Promise<void> {
  const strangers = compareNames(names, referenceFolders());
  for (const failure of strangers) console.log(showFailure(failure));
  let failing = strangers.length;
  for (const each of CASES.filter(({ name }) => asked.length === 0 || asked.includes(name))) {
    const failures = compareCase(each.name, readReferences(each.name), await makeCase(each));
    showFailures(each.name, failures);
    failing += failures.length;
    for (const failure of failures) console.log(showFailure(failure));
    if (asked.includes(each.name)) writeReferences(failures);
  }
  if (failing === 0) {
    console.log('every reference agrees');
    return;
  }
  const next = asked.length === 0 ? 'name the cases whose references are to be written' : 'written; run again';
  console.log(`${failing} differ: look at tests/golden/.out/index.html; ${next}`);
  process.exitCode = 1;
}
