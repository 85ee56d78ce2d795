/** The room the screen of a lesson has, and how the lesson is set out in it. */
import { MediaQuery } from 'svelte/reactivity';

/**
 * The style sheets' own questions (`lesson.css`, `phone.css`). A drawing wider than a phone stretches `innerWidth`, and with it
 * the screen would be taken for a desk; what these ask is the device's width, whatever the page holds.
 */
const PHONE = '(max-width: 48rem)';
const LYING = '(min-width: 48.01rem) and (max-width: 69.99rem) and (max-height: 30rem)';
const DESK = '(min-width: 70rem)';
const ONE_PAGE = '(min-width: 70rem) and (min-height: 46rem)';

export class Room {
  /** The window, px. */
  width = $state(0);
  height = $state(0);
  /** What the drawing leaves of it on a wide screen, px. */
  desk = $state(0);

  readonly #phone = new MediaQuery(PHONE, false);
  readonly #lying = new MediaQuery(LYING, false);
  readonly #desk = new MediaQuery(DESK, false);
  readonly #onePage = new MediaQuery(ONE_PAGE, false);

  /** A phone held upright: everything in one column. */
  get phone(): boolean {
    return this.#phone.current;
  }
  /** A phone of either way: one chart at a time, and the page scrolls. */
  get hand(): boolean {
    return this.phone || this.#lying.current;
  }
  /** The whole lesson stands on one page; the crossing takes what the drawing leaves. */
  get onePage(): boolean {
    return this.#onePage.current;
  }
  /** The root's letters, as app.css grows them with the screen. */
  get rem(): number {
    return Math.min(24, Math.max(16, this.width * 0.0055 + 8.2));
  }

  /** Height of a chart, px; it follows its width when absent. */
  chart(front: boolean): number | undefined {
    if (front) return Math.round(this.height * 0.62);
    if (!this.#desk.current) return undefined;
    // Under the plot stand its reading, above it a title of up to two lines.
    const room = this.onePage && this.desk > 0 ? this.desk - 5.4 * this.rem : this.height * 0.265;
    return Math.round(Math.min(560, Math.max(190, room)));
  }

  /** Height there is for the rows of the ledger, px. */
  ledger(front: boolean): number | undefined {
    if (front) return this.height * 0.62;
    return this.onePage && this.desk > 0 ? this.desk - 6.7 * this.rem : undefined;
  }

  /** Height there is for the drawing, px; the account of repairs is long and needs more of the page. */
  drawing(front: boolean, mending: boolean): number | undefined {
    if (this.height <= 0) return undefined;
    // On a phone that lies, the number under the drawing is to be seen with it.
    if (this.#lying.current) return this.height * 0.5;
    return Math.max(280, this.height * (front ? 0.415 : mending ? 0.31 : 0.4));
  }
}
