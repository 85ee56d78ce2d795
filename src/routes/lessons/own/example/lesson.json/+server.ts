/** Runs only while the pages are built: the example of `lessons/README.md`, as a file to download. */
import { loadExample } from '#lesson-load';

export const prerender = true;

export const GET = () =>
  new Response(loadExample().structure.content, {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
