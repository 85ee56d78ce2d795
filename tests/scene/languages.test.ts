/** The drawing of the main lesson finds room for the same labels in every language. */
import { expect, it, vi } from 'vitest';
import { languages, type Language } from '#i18n';
import { bathroom } from './rigs.ts';
import type { Frame } from '../../src/scene/types.ts';

const FRAMES: readonly Frame[] = [
  { width: 1320, height: 394, kind: 'wide' },
  { width: 1760, height: 530, kind: 'wide' },
  { width: 366, height: 250, kind: 'phone' },
  { width: 296, height: 210, kind: 'phone' },
];
const FAULTS = ['sag', 'crimp', 'swap', 'ties', 'bunched'] as const;

/** Keys of the labels that found room, by frame and number of faults. */
async function labelsIn(language: Language): Promise<Record<string, string[]>> {
  vi.resetModules();
  vi.doMock('#language', () => import(`../../src/i18n/${language}.ts`));
  const { layout } = await import('../../src/scene/layout/index.ts');
  const { faultSize } = await import('../../src/routes/lessons/[slug]/picture.ts');
  const { say } = await import('#i18n');
  const { defaults } = await import('#units');
  const found: Record<string, string[]> = {};
  for (const frame of FRAMES)
    for (let count = 0; count <= FAULTS.length; count++) {
      const { rig, solution, healthy } = bathroom(...FAULTS.slice(0, count));
      const fault = rig.faults?.at(-1);
      const lettering = fault
        ? {
            present: fault.at,
            faultLabel: {
              title: say('play.fault', { number: count }),
              text: faultSize(fault, solution, defaults),
            },
          }
        : {};
      const { labels } = layout(rig, solution, healthy, frame, lettering);
      found[`${frame.width} wide, ${count} faults`] = [
        ...new Set(labels.map(({ key }) => (key.startsWith('fault') ? 'fault' : key))),
      ].sort();
    }
  return found;
}

const english = await labelsIn('en');

it('draws labels at all', () => {
  expect(english['1320 wide, 1 faults']).toContain('fault');
});

it.each(languages.filter((language) => language !== 'en'))(
  '%s has every label English has',
  async (language) => {
    const translated = await labelsIn(language);
    const missing = Object.entries(english).flatMap(([place, keys]) =>
      keys.filter((key) => !translated[place]!.includes(key)).map((key) => `${place}: ${key}`),
    );
    expect(missing).toEqual([]);
  },
);
