import adapter from '@sveltejs/adapter-static';

/** Every route is prerendered; relative paths let the build be served from any folder. */
export default {
  kit: {
    adapter: adapter({ pages: 'build', assets: 'build', strict: true }),
    paths: { relative: true },
    typescript: {
      config: (config) => ({
        ...config,
        include: [...config.include, '../tests/**/*.ts', '../seeds/**/*.json', '../lessons/**/*.json'],
      }),
    },
  },
};
