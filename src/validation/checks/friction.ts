/** Friction factor and compressed flexible duct. */
import { frictionFactor, pressureDropCorrection, type Rig } from '#physics';
import type { Check } from '../types.ts';
import { ductLoss, only, runLoss, STANDARD_AIR } from '../engine.ts';

const colebrook = (
  [
    [1e4, 0, 0.03088],
    [5.6e4, 0.006, 0.03357],
    [1e5, 0.001, 0.02217],
    [1e5, 0.01, 0.0385],
    [1e5, 0.05, 0.07178],
    [2e5, 0.0006, 0.01931],
    [1e6, 0.0001, 0.01344],
  ] as const
).map(([reynolds, roughness, published]): Check => ({
  id: `colebrook-${reynolds / 1000}k-${roughness}`,
  source: 'fluids',
  where: `Re ${reynolds}, roughness ratio ${roughness}`,
  mark: 'computed independently',
  quantity: 'friction factor',
  unit: '',
  published,
  ours: () => frictionFactor(reynolds, roughness),
  allowed: { kind: 'absolute', by: 6e-6, why: 'half a unit of the last digit carried' },
}));

/** Loss of a compressed piece over the same piece pulled out, as the engine charges a run. */
function timesTaut(bore: number, compression: number): number {
  const duct = { material: 'flexible', diameter_mm: bore, path_m: 5 };
  const flow = bore ** 2 / 250;
  return ductLoss(flow, { ...duct, fullLength_m: 5 / (1 - compression) }) / ductLoss(flow, duct);
}

/** Compression that would lose as much as a rigid piece swapped for flexible, 150 mm: 1 - used / full. */
function swappedCompression(): number {
  const flow = 90;
  const rigid = { id: 'duct', kind: 'duct', material: 'rigid', diameter_mm: 150, path_m: 5 } as const;
  const swapped: Rig = only(rigid, STANDARD_AIR, [{ kind: 'flexible-swap', at: 'duct', amount: 1 }]);
  const taut = ductLoss(flow, { ...rigid, material: 'flexible' });
  return (runLoss(swapped, flow) / taut - 1) / (pressureDropCorrection(0.01, 150) - 1) / 100;
}

export const frictionChecks: readonly Check[] = [
  ...colebrook,
  {
    id: 'laminar',
    source: 'poiseuille',
    where: 'Re 2000',
    mark: 'published',
    quantity: 'friction factor',
    unit: '',
    published: 0.032,
    ours: () => frictionFactor(2000, 0.006),
    allowed: { kind: 'absolute', by: 1e-9, why: 'the same law' },
  },
  {
    id: 'churchill',
    source: 'churchill',
    where: 'Re 56 000, roughness ratio 0.006',
    mark: 'published',
    quantity: 'friction factor',
    unit: '',
    published: 0.03391,
    ours: () => frictionFactor(5.6e4, 0.006),
    allowed: { kind: 'relative', by: 0.032, why: 'the most by which the two laws differ' },
  },
  {
    id: 'compression-moderate',
    source: 'abushakra-2004',
    where: 'abstract: moderate compression about 4 times',
    mark: 'published',
    quantity: 'loss over taut at 15 %, mean of 150, 200 and 250 mm',
    unit: '',
    published: 4,
    ours: () => (timesTaut(150, 0.15) + timesTaut(200, 0.15) + timesTaut(250, 0.15)) / 3,
    allowed: {
      kind: 'relative',
      by: 0.3,
      why: 'the abstract names no percentage; 15 % is what duct relaxes to',
    },
  },
  {
    id: 'compression-heavy',
    source: 'abushakra-2004',
    where: 'abstract: more compression close to 10 times',
    mark: 'published',
    quantity: 'loss over taut at 30 %, 150 mm',
    unit: '',
    published: 10,
    ours: () => timesTaut(150, 0.3),
    allowed: { kind: 'relative', by: 0.15, why: '"close to"' },
  },
  {
    id: 'compression-nine',
    source: 'abushakra-2002',
    where: 'abstract: up to a factor of nine',
    mark: 'published',
    quantity: 'loss over taut at 30 %, 150 mm',
    unit: '',
    published: 9,
    ours: () => timesTaut(150, 0.3),
    allowed: { kind: 'relative', by: 0.1, why: 'stated to one figure' },
  },
  {
    id: 'compression-over-ten',
    source: 'weaver-2006',
    where: 'abstracts: above 15 % compression the loss can exceed 10 times',
    mark: 'published',
    quantity: 'loss over taut at 45 %, the most that was tested, 150 mm',
    unit: '',
    published: 10,
    ours: () => timesTaut(150, 0.45),
    allowed: { kind: 'at least', why: 'a lower bound; at 15 % ours is about half of it, so ours leans low' },
  },
  {
    id: 'compression-large',
    source: 'cantrill-2013',
    where: 'abstract: above 4 % compression over 4 times',
    mark: 'published',
    quantity: 'loss over taut at 30 %, 350 mm',
    unit: '',
    published: 4,
    ours: () => timesTaut(350, 0.3),
    allowed: { kind: 'at least', why: 'a lower bound; at 15 % ours is below it, so ours leans low' },
  },
  {
    id: 'compression-relaxed',
    source: 'hpac',
    where: 'flexible duct let go relaxes to about 15 % shorter',
    mark: 'published',
    quantity: 'compression implied by the loss of a swapped piece, 150 mm',
    unit: '%',
    published: 15,
    ours: () => 100 * swappedCompression(),
    allowed: { kind: 'absolute', by: 1, why: '"about"' },
  },
];
