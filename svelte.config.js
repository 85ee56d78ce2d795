import adapter from '@sveltejs/adapter-static';

/** Every language but English is built by itself, into a folder of its own; see src/i18n/languages.ts. */
const language = process.env.LOST_LITRES_LANGUAGE ?? 'en';
const translated = language !== 'en';
const folder = translated ? `build/${language}` : 'build';

/** Every route is prerendered; relative paths let the build be served from any folder. */
export default {
  kit: {
    adapter: adapter({ pages: folder, assets: folder, strict: true }),
    paths: { relative: true, base: translated ? `/${language}` : '' },
    // Pages that are English by nature are left to the English build, and lessons not yet translated: what the
    // first page links to is built.
    prerender: translated
      ? { entries: ['/', '/glossary', '/practice'], handleUnseenRoutes: 'ignore' }
      : { entries: ['*'] },
    typescript: {
      config: (config) => ({
        ...config,
        include: [...config.include, '../tests/**/*.ts', '../seeds/**/*.json', '../lessons/**/*.json'],
      }),
    },
  },
};
