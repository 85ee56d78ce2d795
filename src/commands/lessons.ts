/**
 * `npm run -s lessons [-- FOLDER ...]`: checks every lesson (or the folders named), prints each step's solved
 * flows and the lesson as a script to read. Exit 1, with file, place and remedy, where one is not right.
 */
import { checkFolder, languagesOf, lessonFolders } from './check-lesson.ts';
import { script } from './lessons/script.ts';

const named = process.argv.slice(2).filter((argument) => !argument.startsWith('-'));
const brief = process.argv.includes('--brief');
let wrong = 0;
for (const folder of named.length ? named : lessonFolders()) {
  const { lesson, lines } = checkFolder(folder);
  wrong += lines.length;
  if (lesson) console.log(`${script(lesson, brief)}\nWords in: ${languagesOf(folder).join(', ')}`);
  else console.error(lines.join('\n'));
}
console.log(wrong ? `${wrong} problems` : 'every lesson holds up');
process.exitCode = wrong ? 1 : 0;
