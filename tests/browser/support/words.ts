/** Every run of words a reader can see, with where it stands and how large it is drawn. */
import type { Page } from 'playwright-core';

export interface Words {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  /** Size of the letters in px as drawn, whatever a picture is scaled by. */
  readonly size: number;
}

/** `but`: a selector of what is left out with all in it. */
export const wordsInSight = (reader: Page, but: string): Promise<Words[]> =>
  reader.evaluate((unwanted) => {
    const found: Words[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const element = node.parentElement!;
      const words = node.textContent?.trim() ?? '';
      if (!words || element.closest(`.unseen, script, style, ${unwanted}`)) continue;
      if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const { left, right, width } = range.getBoundingClientRect();
      if (width === 0) continue;
      const svg = element instanceof SVGElement ? element.ownerSVGElement : null;
      const inner = svg?.viewBox.baseVal.width ?? 0;
      const scale = svg && inner > 0 ? svg.getBoundingClientRect().width / inner : 1;
      found.push({ words, left, right, size: parseFloat(getComputedStyle(element).fontSize) * scale });
    }
    return found;
  }, but);
