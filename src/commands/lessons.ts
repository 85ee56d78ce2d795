/**
 * `npm run -s lessons [-- FOLDER ...]`: checks every lesson (or the folders named), prints each step's solved
 * flows and the lesson as a script to read. Exit 1, with file, place and remedy, where one is not right.
 */
import { say } from '#i18n';
import { checkFolder, languagesOf, lessonFolders } from './check-lesson.ts';
import { idTables } from './lessons/ids.ts';
import { script } from './lessons/script.ts';

const USAGE = `npm run -s lessons -- [FOLDER ...] [--brief]

Checks the lessons in these folders, or all in lessons/, and prints each as a script with
every number worked out. A lesson is a folder NN-slug with lesson.json and text.en.md;
lessons/README.md says how to write one. Ends with exit code 1 where something does not hold.

  --brief   the flows of each step, no words
  --ids     the rigs, pieces, fans, meters, terms and cautions a lesson may name
  --help    this`;

function checkAll(): void {
  const named = process.argv.slice(2).filter((argument) => !argument.startsWith('-'));
  const brief = process.argv.includes('--brief');
  let [wrong, warned] = [0, 0];
  for (const folder of named.length ? named : lessonFolders()) {
    const { lesson, lines, warnings = [] } = checkFolder(folder);
    wrong += lines.length;
    if (lesson) console.log(`${script(lesson, brief)}\nWords in: ${languagesOf(folder).join(', ')}`);
    for (const line of [...lines, ...warnings]) console.error(line);
    warned += warnings.length;
  }
  if (warned) console.log(say('lesson.problem.warned', { count: warned }));
  console.log(say('lesson.problem.count', { count: wrong }));
  process.exitCode = wrong ? 1 : 0;
}

if (process.argv.includes('--help') || process.argv.includes('-h')) console.log(USAGE);
else if (process.argv.includes('--ids')) console.log(idTables());
else checkAll();
