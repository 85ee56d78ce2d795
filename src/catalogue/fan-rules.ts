/** What a fan table must keep to beyond its shape: enough points, rising flow, falling pressure. */
import type { FanTable } from '#physics';
import { finding, type Finding } from './problems.ts';
import { inRange } from './ranges.ts';

/** Fewer points than this say nothing about the bend of a curve. */
const FEWEST_POINTS = 3;

/** `path` is where the table stands, with the dot that follows it: "" in a file of its own. */
export function fanFindings(table: FanTable, path: string): Finding[] {
  const { points } = table;
  if (points.length < FEWEST_POINTS)
    return [finding('too-few', `${path}points`, points.length, FEWEST_POINTS, 'points')];
  return [...flowFindings(table, path), ...pressureFindings(table, path), ...powerFindings(table, path)];
}

function flowFindings({ points }: FanTable, path: string): Finding[] {
  const found = points.flatMap((point, index) => {
    const before = points[index - 1];
    if (before === undefined || point.flow_L_s > before.flow_L_s) return [];
    return [
      finding('flow-does-not-rise', `${path}points[${index}].flow_L_s`, point.flow_L_s, before.flow_L_s),
    ];
  });
  const last = points.length - 1;
  const largest = Math.max(...points.map((point) => point.flow_L_s));
  if (found.length > 0 || inRange('largestFlow_L_s', largest)) return found;
  return [finding('out-of-range', `${path}points[${last}].flow_L_s`, 'largestFlow_L_s', largest)];
}

function pressureFindings({ points, saddle }: FanTable, path: string): Finding[] {
  const first = points[0]!.pressure_Pa;
  const largest = Math.max(...points.map((point) => point.pressure_Pa));
  if (!inRange('largestPressure_Pa', largest)) {
    return [finding('out-of-range', `${path}points[0].pressure_Pa`, 'largestPressure_Pa', largest)];
  }
  const found: Finding[] = [];
  let rises = 0;
  let wasRising = false;
  points.forEach(({ pressure_Pa }, index) => {
    const before = points[index - 1]?.pressure_Pa ?? pressure_Pa;
    const place = `${path}points[${index}].pressure_Pa`;
    const rising = pressure_Pa > before;
    if (rising && !wasRising) rises += 1;
    wasRising = rising;
    if (!rising) return;
    if (!saddle) found.push(finding('pressure-rises', place, pressure_Pa, before));
    else if (rises > 1) found.push(finding('pressure-rises-twice', place, pressure_Pa, before));
    else if (pressure_Pa > first) found.push(finding('saddle-too-high', place, pressure_Pa, first));
  });
  return found;
}

function powerFindings({ points }: FanTable, path: string): Finding[] {
  if (points.every((point) => point.power_W === undefined)) return [];
  return points.flatMap((point, index) =>
    point.power_W === undefined ? [finding('power-in-part', `${path}points[${index}].power_W`)] : [],
  );
}
