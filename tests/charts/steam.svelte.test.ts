/** The steam clock as a reader meets it, told by the engine's own story of a shower. */
import './page.ts';
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { SteamClock, type SteamStory } from '#charts';
import { absoluteHumidity, filmDryAt_min, saturationHumidity, showerStory } from '#physics';
import { boxesOverlap } from '../../src/charts/placeLabels.ts';
import { dryAfter, steamLayout, wetOf } from '../../src/charts/steam.ts';

const makeUp_g_m3 = absoluteHumidity(20, 0.55);
function story(tone: SteamStory['tone'], flow_L_s: number, runOn_min = 300): SteamStory {
  const room = { volume_m3: 12, temperature_C: 22, flow_L_s, makeUp_g_m3 };
  const moments = showerStory({ room, start_g_m3: makeUp_g_m3, shower_min: 10, runOn_min, whole_min: 300 });
  return { id: tone, label: tone === 'healthy' ? 'healthy run' : 'with five faults', tone, moments };
}
const mirrorFogs = saturationHumidity(20) / saturationHumidity(22);
const good = story('healthy', 40);
const bad = story('present', 18);
const props = { stories: [good, bad], shower_min: 10, mirrorFogs };
const name = (): string => screen.getByRole('img').getAttribute('aria-label')!;
const title = (container: HTMLElement) => container.querySelector('figcaption')?.textContent;

describe('SteamClock', () => {
  it('finds what stays wet longer, counted from the end of the shower', () => {
    const { container } = render(SteamClock, props);
    const [was, now] = [dryAfter('mirror', good, props)!, dryAfter('mirror', bad, props)!];
    expect(now).toBeGreaterThan(was);
    const walls = dryAfter('walls', bad, props)!;
    // The mirror hardly tells the runs apart; the walls do.
    expect(title(container)).toBe(`The walls dry in ${walls} min, not ${dryAfter('walls', good, props)!}`);
    // The last gram is not waited for, so the walls are called dry no later than the film is gone.
    expect(walls).toBeLessThanOrEqual(filmDryAt_min(bad.moments, 10)! - 10);
    expect(walls).toBeGreaterThan(now);
    expect(name()).toContain(`With five faults: the walls are dry ${walls} minutes after the shower.`);
  });

  it('draws lanes for mirror and walls of each run, named and told apart by dash', () => {
    const { container } = render(SteamClock, props);
    expect(container.querySelectorAll('path.bar.healthy')).toHaveLength(2);
    expect(container.querySelectorAll('path.bar.present')).toHaveLength(2);
    const words = [...container.querySelectorAll('svg text')].map((text) => text.textContent);
    expect(words).toEqual(expect.arrayContaining(['Mirror fogged', 'Walls wet', 'healthy run', 'shower']));
    for (const { text } of steamLayout(props, 460, 240, 14).lanes) expect(words).toContain(text);
  });

  it('ends a lane where its thing is dry, and leaves it open where it never is', () => {
    const stopped = { ...props, stories: [story('present', 18, 5)], runOn_min: 5 };
    const { container } = render(SteamClock, stopped);
    expect(wetOf('walls', stopped.stories[0]!, stopped)?.to).toBeNull();
    expect(title(container)).toBe('The walls are still wet after 290 min');
    expect(container.querySelector('text.stop')?.textContent).toBe('fan stops');
    expect(name()).toContain('The fan stops 5 minutes after the shower.');
    const ends = [...container.querySelectorAll('path.bar')].map((path) => path.getAttribute('d')?.at(-1));
    expect(ends[1]).not.toBe('z');
  });

  it('says so when nothing is ever wet', () => {
    const dry = { ...props, stories: [story('present', 2000)] };
    const { container } = render(SteamClock, dry);
    expect(title(container)).toBe('The mirror stays clear');
    expect(container.querySelector('path.bar')).toBeNull();
  });

  it.each([296, 366, 666])('keeps its words apart and inside at %d px', (width) => {
    const { labels, lanes, frame } = steamLayout(props, width, 240, 14);
    labels.forEach(({ box, id }, i) => {
      for (const other of labels.slice(i + 1)) expect(boxesOverlap(box, other.box), id).toBe(false);
      expect(frame.x + box.x + box.width, id).toBeLessThanOrEqual(width);
    });
    expect(new Set(lanes.map(({ y }) => y)).size).toBe(4);
  });

  it('has when things dry and the damp of the air as tables, by key', async () => {
    render(SteamClock, props);
    screen.getByRole('button', { name: 'Table' }).focus();
    await userEvent.keyboard('t');
    const [dry, air] = screen.getAllByRole('table');
    const rows = within(dry!)
      .getAllByRole('row')
      .map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows[2]).toEqual([
      'with five faults',
      `${dryAfter('mirror', bad, props)} min`,
      `${dryAfter('walls', bad, props)} min`,
    ]);
    const minute = within(air!).getAllByRole('row')[3]!;
    expect([...minute.children].map((cell) => cell.textContent).slice(0, 2)).toEqual([
      '10',
      String(Math.round(good.moments[10]!.relativeHumidity * 100)),
    ]);
  });

  it('draws no NaN from nothing', () => {
    const { container } = render(SteamClock, { stories: [], shower_min: 10, mirrorFogs });
    expect(title(container)).toBe('No shower yet');
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });
});
