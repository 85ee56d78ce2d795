/** Runs only while the pages are built: the example of `lessons/README.md`, as a file to download. */
import { loadExample } from '#lesson-load';

export const prerender = true;

export const GET = () =>
  new Response(loadExample().words.content, { headers: { 'content-type': 'text/markdown; charset=utf-8' } });
