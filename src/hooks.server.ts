/** Runs only while the pages are built: tells each page's own language. */
import type { Handle } from '@sveltejs/kit';
import { language } from '#i18n';

export const handle: Handle = ({ event, resolve }) =>
  resolve(event, { transformPageChunk: ({ html }) => html.replace('%language%', language) });
