/** What a reader has chosen for every screen: units and theme, kept in the browser's own storage. */
import { defaults, units, type UnitChoice } from '#units';

export type Theme = 'device' | 'paper' | 'blueprint' | 'contrast';
/** How the screen is set out: for one reader, or for a class before a projector. */
export type View = 'desk' | 'class';

const KEY = 'lost-litres.settings';
/** What the page's root is marked with; the script in app.html does the same before the first paint. */
const MARKS: Readonly<Record<Theme, string | undefined>> = {
  device: undefined,
  paper: 'light',
  blueprint: 'dark',
  contrast: 'contrast',
};
const THEMES = Object.keys(MARKS) as Theme[];

/** Reads stored settings; anything not understood falls back, key by key. */
export function readSettings(text: string | null): { choice: UnitChoice; theme: Theme } {
  let stored: Record<string, unknown> = {};
  try {
    const value: unknown = JSON.parse(text ?? '{}');
    if (value && typeof value === 'object') stored = value as Record<string, unknown>;
  } catch {
    // Settings are two words; starting from the defaults loses nothing of the reader's work.
  }
  const known = (list: readonly { name: string }[], value: unknown) =>
    list.some((unit) => unit.name === value);
  return {
    choice: {
      flow: known(units.flow, stored.flow) ? (stored.flow as UnitChoice['flow']) : defaults.flow,
      pressure: known(units.pressure, stored.pressure)
        ? (stored.pressure as UnitChoice['pressure'])
        : defaults.pressure,
    },
    theme: THEMES.find((theme) => theme === stored.theme) ?? 'device',
  };
}

class Settings {
  choice = $state.raw<UnitChoice>(defaults);
  theme = $state.raw<Theme>('device');
  /** Belongs to the page's address, so it is not kept. */
  view = $state.raw<View>('desk');

  /** Called once a page has come alive; before that the defaults are shown, as in the prerendered page. */
  load(): void {
    let text: string | null = null;
    try {
      text = localStorage.getItem(KEY);
    } catch {
      // Storage may be switched off; the app works without it.
    }
    const read = readSettings(text);
    this.choice = read.choice;
    this.theme = read.theme;
  }

  setFlow(flow: UnitChoice['flow']): void {
    this.choice = { ...this.choice, flow };
    this.#keep();
  }

  setPressure(pressure: UnitChoice['pressure']): void {
    this.choice = { ...this.choice, pressure };
    this.#keep();
  }

  setTheme(theme: Theme): void {
    this.theme = theme;
    const mark = MARKS[theme];
    if (mark) document.documentElement.dataset.theme = mark;
    else delete document.documentElement.dataset.theme;
    this.#keep();
  }

  setView(view: View): void {
    this.view = view;
    if (view === 'class') document.documentElement.dataset.view = view;
    else delete document.documentElement.dataset.view;
  }

  #keep(): void {
    try {
      localStorage.setItem(KEY, JSON.stringify({ ...this.choice, theme: this.theme }));
    } catch {
      // See load: without storage the choice lasts as long as the page.
    }
  }
}

export const settings = new Settings();
