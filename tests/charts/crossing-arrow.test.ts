/** The arrow from where the curves met to where they meet: along the fan curve, or over to it where the fan changed. */
import { expect, test } from 'vitest';
import { layout } from '../../src/charts/crossing.ts';
import { defaults } from '#units';

const curve = (top: number) =>
  Array.from({ length: 41 }, (_, i) => ({ flow_L_s: i * 2.5, pressure_Pa: top * (1 - (i / 40) ** 2) }));
const run = curve(0).map(({ flow_L_s }) => ({ flow_L_s, pressure_Pa: 0.03 * flow_L_s ** 2 }));

/** Heights of the arrow's points, from its tail to its tip, px. */
function heights(before: { flow_L_s: number; pressure_Pa: number }) {
  const drawn = layout(
    {
      fan: curve(100),
      curves: [{ id: 'present', label: 'now', points: run, tone: 'present' }],
      point: { flow_L_s: 50, pressure_Pa: 75 },
      before,
      hidden: false,
      choice: defaults,
      extent: { flow_L_s: 100, pressure_Pa: 300 },
    },
    { width: 500, height: 320, type: 14 },
  );
  return [...drawn.arrow!.path.matchAll(/[ML]?[\d.-]+,([\d.-]+)/g)].map(([, y]) => Number(y));
}

test('it never turns back on its way to a fan that was turned down', () => {
  const ys = heights({ flow_L_s: 90, pressure_Pa: 240 });
  expect(ys.length).toBeGreaterThan(8);
  // From high up to low down it may rise at first, over its own bend, and then only falls.
  const turns = ys.slice(1).filter((y, i) => i > 0 && y - ys[i]! > 0 !== ys[i]! - ys[i - 1]! > 0);
  expect(turns.length).toBeLessThanOrEqual(1);
});
