/**
 * `npm run -s bench`: how fast the engine is. It is bundled first, because the loader that runs these commands
 * names every closure as it is made, which the pages never do and which costs the engine half its speed.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { root } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'lost-litres-bench-'));
try {
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: 'src/commands/bench-run.ts',
      outDir: folder,
      emptyOutDir: true,
      rollupOptions: { output: { entryFileNames: 'bench.mjs' } },
    },
  });
  const { bench } = (await import(pathToFileURL(join(folder, 'bench.mjs')).href)) as {
    bench: () => Promise<string>;
  };
  process.stdout.write(await bench());
} finally {
  rmSync(folder, { recursive: true });
}
