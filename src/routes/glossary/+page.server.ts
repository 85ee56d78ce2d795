/** Runs only while the pages are built: the terms of the one glossary file, and a run to draw them on. */
import { language } from '#i18n';
import { loadGlossary, loadLessons } from '#lesson-load';
import { RunSolver, seedRig, stock } from '#session';

export const prerender = true;
export const csr = false;

/** Pictures that show a term better than words: what of the crossing is drawn for it. */
const PICTURES: Readonly<Record<string, readonly ('fan' | 'run' | 'point')[]>> = {
  'fan-curve': ['fan'],
  'system-curve': ['run'],
  'operating-point': ['fan', 'run', 'point'],
};

export function load() {
  const rig = seedRig('upstairs-bathroom');
  const run = new RunSolver(rig, stock);
  const { fan, flow_L_s } = run.at([]);
  const lessons = loadLessons();
  const terms = Object.entries(loadGlossary())
    .map(([id, section]) => ({
      id,
      ...section,
      shows: PICTURES[id] ?? [],
      lessons: lessons
        .filter(({ lesson }) => lesson.terms.includes(id))
        .map((each) => ({ slug: each.lesson.slug, title: each.text.title, language: each.language })),
    }))
    .sort((one, other) => one.title.localeCompare(other.title, language));
  return {
    terms,
    chart: {
      fan: run.fan,
      curve: run.curve([]),
      extent: run.extent,
      point: { flow_L_s: flow_L_s.fan, pressure_Pa: fan.pressure_Pa },
    },
  };
}
