/** Commands look for a Chromium too, so the search lives with them. */
export { findChromium, getChromium, places } from '../../../src/commands/chromium.ts';
