/** Every state there is, by group. Worked out while the pages are built; the stored pictures are drawn from it. */
import { say } from '#i18n';
import { charts } from './charts.ts';
import { controls } from './controls.ts';
import { faults } from './faults.ts';
import { parts } from './parts.ts';
import type { Group } from './types.ts';

export const groups: readonly Group[] = [
  { id: 'parts', title: say('gallery.group.parts'), states: parts },
  { id: 'faults', title: say('gallery.group.faults'), states: faults },
  { id: 'charts', title: say('gallery.group.charts'), states: charts },
  { id: 'controls', title: say('gallery.group.controls'), states: controls },
];
