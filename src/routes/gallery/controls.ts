/** Every control in every state. What looks the same but has the focus takes it once its anchor is gone to. */
import { say, type MessageKey } from '#i18n';
import type { Station } from '#ui';
import type { State } from './types.ts';

type Body = State['body'];
const state = (id: string, title: string, body: Body): State => ({ id: `control-${id}`, title, body });
const focused = (id: string, what: string, body: Body): State => ({
  ...state(`${id}-focused`, say('gallery.state.focused', { what }), body),
  focus: true,
});

const choices = ['a', 'b', 'c'].map((id) => ({
  id,
  words: say(`gallery.answer.${id as 'a' | 'b' | 'c'}`),
}));
const options = (tried: readonly string[], found?: string): Body => ({
  kind: 'options',
  choices,
  tried,
  ...(found ? { found } : {}),
  reason: say(found ? 'gallery.answer.why-right' : 'gallery.answer.why-wrong'),
});
const guess = (value_L_s: number, sure?: number): Body => ({
  kind: 'guess',
  value_L_s,
  low_L_s: 10,
  high_L_s: 45,
  ...(sure ? { sure } : {}),
});
const station = (mark: string, now: Station['state']): Station => ({
  id: `${mark}-${now}`,
  mark,
  title: say(`gallery.station.${now}`),
  state: now,
});
const themes = (value: string): Body => ({
  kind: 'picker',
  legend: say('ui.theme'),
  options: [
    { value: 'paper', label: say('ui.theme.paper') },
    { value: 'blueprint', label: say('ui.theme.blueprint') },
  ],
  value,
});
const press = (more: { quiet?: boolean; off?: MessageKey } = {}): Body => ({
  kind: 'press',
  words: say('play.lock'),
  ...more,
});

export const controls: readonly State[] = [
  state('press', say('gallery.state.press'), press()),
  state('press-quiet', say('gallery.state.press-quiet'), press({ quiet: true })),
  focused('press', say('gallery.state.press'), press()),
  state('press-off', say('gallery.state.off'), press({ off: 'lesson.reason.predict-first' })),
  state('options', say('gallery.state.options'), options([])),
  focused('options', say('gallery.state.options'), options([])),
  state('options-wrong', say('gallery.state.wrong'), options(['a'])),
  state('options-right', say('gallery.state.right'), options(['a', 'b'], 'b')),
  state('guess', say('gallery.state.guess'), guess(30)),
  focused('guess', say('gallery.state.guess'), guess(30)),
  state('guess-sure', say('gallery.state.guess-sure'), guess(24, 2)),
  state('guess-least', say('gallery.state.guess-least'), guess(10)),
  state('stations', say('gallery.state.stations'), {
    kind: 'stations',
    stations: [station('1', 'done'), station('2', 'here'), station('3', 'open'), station('✓', 'ahead')],
  }),
  focused('stations', say('gallery.state.stations'), {
    kind: 'stations',
    stations: [station('1', 'done'), station('2', 'here')],
  }),
  state('picker-none', say('gallery.state.picker-none'), themes('device')),
  state('picker-chosen', say('gallery.state.chosen'), themes('blueprint')),
  focused('picker', say('gallery.state.picker'), themes('paper')),
];
