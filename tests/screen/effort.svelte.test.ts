/** What a step's own chart is fed: nothing of the change before the reveal, and the engine's numbers after it. */
import { describe, expect, it } from 'vitest';
import './page.ts';
import { isTaught, type TaughtStep } from '#lesson';
import { loadLesson } from '#lesson-load';
import { LessonPlay, lessonRigs, stockFor } from '#session';
import { endStories, steamStories, wattsFans, wattsFrame } from '../../src/routes/lessons/[slug]/effort.ts';

function opened(slug: string) {
  const { lesson } = loadLesson(slug);
  const rigs = lessonRigs(lesson);
  const play = new LessonPlay(lesson, rigs, stockFor(lesson, rigs));
  const step = (id: string) => lesson.steps.find((each) => each.id === id && isTaught(each)) as TaughtStep;
  return { play, step };
}

describe('the watts chart of a step', () => {
  const { play, step } = opened('watts-and-litres');

  it('shows one run until the reveal, and then both', () => {
    const frame = wattsFrame(play, step('choke'));
    expect(wattsFans(frame, play.solution, false)).toHaveLength(1);
    const [before, now] = wattsFans(frame, play.solution, true);
    expect(before!.present!.flow_L_s).toBeCloseTo(68.3, 1);
    expect(now!.points).toEqual([now!.present]);
  });

  it('draws the speeds of a fan that has them, and of no other', () => {
    expect(wattsFrame(play, step('choke')).line).toEqual([]);
    const { line } = wattsFrame(play, step('half-speed'));
    expect(line.map(({ speed }) => speed)).toContain(0.5);
    expect(line.every(({ power_W }, i) => i === 0 || power_W > line[i - 1]!.power_W)).toBe(true);
  });

  it('leaves out the speeds at which the wind blows the fan back', () => {
    const { line } = wattsFrame(play, step('change-room'));
    expect(line.length).toBeGreaterThan(1);
    expect(line.map(({ speed }) => speed)).not.toContain(0.4);
    expect(line.every(({ flow_L_s }) => flow_L_s > 0)).toBe(true);
  });

  it('compares two fans at the same watts on the same run only', () => {
    expect(wattsFrame(play, step('fan-or-knife')).same).toBeUndefined();
    const { same } = wattsFrame(play, step('same-watts'));
    const [axial, mixed] = same!.flow_L_s;
    expect(mixed!).toBeGreaterThan(1.5 * axial!);
  });

  it('keeps all it draws within its axes', () => {
    for (const id of ['read', 'choke', 'fan-or-knife', 'same-watts', 'half-speed', 'change-room']) {
      const { extent, line, start } = wattsFrame(play, step(id));
      for (const point of [start!, ...line]) {
        expect(point.power_W).toBeLessThan(extent.power_W);
        expect(point.flow_L_s).toBeLessThan(extent.flow_L_s);
      }
    }
  });
});

describe('the steam clock', () => {
  it('tells of one run until the reveal, and then of both', () => {
    const { play } = opened('what-the-room-feels');
    expect(steamStories(play, false).map(({ tone }) => tone)).toEqual(['present']);
    expect(steamStories(play, true).map(({ tone }) => tone)).toEqual(['healthy', 'present']);
  });

  it.each([
    ['five-small-faults', '5 faults'],
    ['what-the-room-feels', 'one fault'],
    ['watts-and-litres', 'one fault'],
  ])('ends %s with the sound run and the run with %s, which stays damp longer', (slug, label) => {
    const stories = endStories(opened(slug).play)!.stories;
    expect(stories.map((story) => story.label)).toEqual(['healthy run', label]);
    const damp = stories.map(({ moments }) => moments.filter(({ film_g }) => film_g > 1).length);
    expect(damp[1]!).toBeGreaterThan(damp[0]!);
  });
});
