/** Runs only while the pages are built: `lessons/README.md`, as a file to download. */
import { loadGuide } from '#lesson-load';

export const prerender = true;

export const GET = () =>
  new Response(loadGuide(), { headers: { 'content-type': 'text/markdown; charset=utf-8' } });
