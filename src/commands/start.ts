/** `npm start`: builds the pages, serves them, says where. PORT asks for another port than 4173. */
import { buildPages } from './run.ts';
import { serve } from './serve.ts';

const wanted = Number(process.env.PORT ?? 4173);
if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65_535) {
  console.error(`PORT is ${process.env.PORT}; it must be a whole number from 0 to 65535.`);
  process.exit(1);
}

try {
  console.log('Building the pages ...');
  const { address, close } = await serve(await buildPages(), wanted);
  console.log(`Lost Litres is at ${address}/ (Ctrl-C ends it)`);
  console.log(`Open the main lesson first: ${address}/lessons/five-small-faults`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void close().then(() => process.exit(0)));
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
