/** A reader without a mouse: everything here goes through `page.keyboard`, and looks only at what has the focus. */
import type { Page } from 'playwright-core';

export interface Focused {
  tag: string;
  type: string;
  /** What a screen reader would call it. */
  name: string;
  /** The region it stands in: `panel`, `crossing`, `ledger`, `head`, or nothing. */
  place: string;
  off: boolean;
}

export function focused(page: Page): Promise<Focused> {
  return page.evaluate(() => {
    const element = document.activeElement ?? document.body;
    const label = (element as HTMLInputElement).labels?.[0]?.textContent;
    const places = { panel: '#panel', crossing: '.crossing', ledger: '.ledger', head: 'header' };
    return {
      tag: element.tagName.toLowerCase(),
      type: element.getAttribute('type') ?? '',
      name: (element.getAttribute('aria-label') ?? label ?? element.textContent ?? '')
        .replace(/\s+/g, ' ')
        .trim(),
      place: Object.entries(places).find(([, selector]) => element.closest(selector))?.[0] ?? '',
      off: element.getAttribute('aria-disabled') === 'true',
    };
  });
}

/** Tabs until `wanted` has the focus. Throws with everything passed on the way when it never comes. */
export async function tabTo(
  page: Page,
  wanted: (element: Focused) => boolean,
  { back = false, most = 90 } = {},
): Promise<Focused> {
  const passed: string[] = [];
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
    const element = await focused(page);
    if (wanted(element)) return element;
    passed.push(`${element.place}/${element.tag} ${element.name.slice(0, 40)}`);
  }
  throw new Error(`Tab never came to it. Passed: ${passed.join(' | ')}`);
}

/** Tabs to a button of the panel by its words and presses it. */
export async function press(
  page: Page,
  name: string | RegExp,
  options: { back?: boolean } = {},
): Promise<Focused> {
  const fits = (text: string) => (typeof name === 'string' ? text === name : name.test(text));
  const button = await tabTo(
    page,
    ({ tag, place, name: text }) => tag === 'button' && place === 'panel' && fits(text),
    options,
  );
  await page.keyboard.press('Enter');
  return button;
}

/** Opens the table of the chart in `place`. */
export async function openTable(page: Page, place: 'crossing' | 'ledger'): Promise<void> {
  await tabTo(
    page,
    (element) => element.tag === 'button' && element.place === place && element.name === 'Table',
  );
  await page.keyboard.press('Enter');
}

/** Types a prediction into its field and leaves it. */
export async function typeGuess(page: Page, number: string): Promise<void> {
  await tabTo(page, ({ place, type }) => place === 'panel' && type === 'text');
  await page.keyboard.press('Control+a');
  await page.keyboard.type(number);
  await page.keyboard.press('Tab');
}
