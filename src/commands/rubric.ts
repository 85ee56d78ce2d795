/** `npm run -s rubric`: the machine-seen rows of the rubric for every lesson; exit 1 where a lesson does not check. */
import { checkFolder, lessonFolders } from './check-lesson.ts';
import { GATES, rubric } from './lessons/rubric.ts';

let wrong = 0;
for (const folder of lessonFolders()) {
  const { lesson: loaded, lines } = checkFolder(folder);
  if (!loaded) {
    wrong += 1;
    console.error(lines.join('\n'));
    continue;
  }
  const { lesson, text } = loaded;
  const scores = rubric(lesson, text);
  const sum = scores.reduce((all, { score }) => all + score, 0);
  console.log(
    `\n${lesson.number}. ${text.title}: ${sum} of ${scores.length * 3} in the rows a machine can see`,
  );
  for (const { row, name, score, where } of scores) {
    const gate = (GATES as readonly number[]).includes(row) && score < 2 ? '  GATE NOT MET' : '';
    console.log(`  ${String(row).padStart(2)}  ${score}  ${name.padEnd(48)} ${where}${gate}`);
  }
}
process.exitCode = wrong ? 1 : 0;
