/**
 * Necks in a duct: rings, crimps, ties, slotted faces. Idelchik's thick-edged form was read in an open
 * loss library (diagrams 4-12, 4-15); thin and rounded forms are from memory, and the thin one is held
 * against ISO 5167 below. How a real crimp fits them is a model assumption: no test of one was found.
 */
import { describe, expect, test } from 'vitest';
import { crimpSystemEffect, flattenedArea, roundedNeck, thickNeck, thinNeck } from '#physics';
import { expectPrinted, expectWithin } from './support.ts';

// open share; thin; thick 0.2, 0.5, 1, 2.4; rounded 0.05, 0.08, 0.15
const TABLE = [
  [0.91, '0.171', ['0.168', '0.164', '0.144', '0.167'], ['0.096', '0.072', '0.044']],
  [0.84, '0.377', ['0.362', '0.341', '0.272', '0.284'], ['0.224', '0.174', '0.116']],
  [0.75, '0.799', ['0.759', '0.701', '0.525', '0.511'], ['0.502', '0.402', '0.283']],
  [0.64, '1.731', ['1.635', '1.494', '1.079', '1.001'], ['1.137', '0.934', '0.688']],
  [0.51, '4.087', ['3.848', '3.496', '2.477', '2.233'], ['2.791', '2.340', '1.788']],
  [0.5, '4.370', ['4.113', '3.736', '2.645', '2.381'], ['2.991', '2.512', '1.923']],
  [0.36, '11.827', ['11.120', '10.080', '7.093', '6.291'], ['8.347', '7.122', '5.603']],
  [0.25, '30.678', ['28.838', '26.135', '18.391', '16.215'], ['22.074', '19.024', '15.214']],
  [0.19, '59.313', ['55.759', '50.537', '35.604', '31.330'], ['43.076', '37.299', '30.061']],
] as const;

describe('necks', () => {
  test.each(TABLE)('open share %d', (open, thin, thick, rounded) => {
    expectPrinted(thinNeck(open), thin, 'thin');
    [0.2, 0.5, 1, 2.4].forEach((length, i) =>
      expectPrinted(thickNeck(open, length), thick[i]!, `thick ${length}`),
    );
    [0.05, 0.08, 0.15].forEach((radius, i) =>
      expectPrinted(roundedNeck(open, radius), rounded[i]!, `rounded ${radius}`),
    );
  });

  // Permanent loss of a corner-tap orifice; discharge coefficients by Reader-Harris and Gallagher (ISO 5167-2).
  test.each([
    [0.5, 0.6089, '29.585'],
    [0.6, 0.6134, '11.167'],
    [0.7, 0.6146, '4.254'],
    [0.75, 0.6116, '2.570'],
  ] as const)(
    'ISO 5167 orifice, diameter ratio %d: the thin ring is 3 to 13 %% above',
    (beta, discharge, printed) => {
      const iso = (Math.sqrt(1 - beta ** 4 * (1 - discharge ** 2)) / (discharge * beta ** 2) - 1) ** 2;
      expectWithin(iso, Number(printed), 2e-3, 'the orifice itself');
      const ratio = thinNeck(beta ** 2) / iso;
      expect(ratio).toBeGreaterThan(1.03);
      expect(ratio).toBeLessThan(1.13);
    },
  );

  test.each([
    [0.3, 19.32, 17],
    [0.4, 8.758, 7.7],
    [0.5, 4.37, 3.8],
    [0.7, 1.148, 1.1],
  ])('a face of free area %d is within 15 %% of Blevins square-edged screens', (open, ours, blevins) => {
    expectWithin(thinNeck(open), ours, 1e-3);
    expectWithin(thinNeck(open), blevins, 0.151);
  });

  test.each([
    [0.1, '0.99'],
    [0.2, '0.96'],
    [0.3, '0.91'],
    [0.4, '0.84'],
    [0.5, '0.75'],
    [0.6, '0.64'],
    [0.7, '0.51'],
    [0.8, '0.36'],
    [0.9, '0.19'],
  ] as const)(
    'a flat oval flattened by %d keeps its perimeter and this share of its area',
    (flattened, printed) => {
      expectPrinted(flattenedArea(flattened), printed);
      // From the shape: two half circles of the height, and flats making the perimeter up.
      const height = 1 - flattened;
      const flat = (Math.PI - Math.PI * height) / 2;
      expect(flattenedArea(flattened)).toBeCloseTo(
        ((Math.PI / 4) * height ** 2 + flat * height) / (Math.PI / 4),
        12,
      );
    },
  );

  // Bore under the tie over full bore; K of a rounded neck, r/dh 0.08.
  test.each([
    [0.9, '0.236'],
    [0.8, '0.934'],
    [0.7, '2.696'],
    [0.6, '7.122'],
  ] as const)('a tie that draws the bore to %d of itself', (ratio, printed) => {
    expectPrinted(roundedNeck(ratio ** 2, 0.08), printed);
  });

  // Thick pinch of length 0.5 by the other recollection of its exponent, 7 for 8: under 0.5 % apart.
  test.each([
    [0.9, 0.1856],
    [0.8, 0.4798],
    [0.75, 0.703],
    [0.64, 1.497],
    [0.5, 3.745],
    [0.36, 10.1],
    [0.25, 26.2],
  ])('the two recollections of the thick-edged law agree at open share %d', (open, other) =>
    expectWithin(thickNeck(open), other, 5e-3),
  );

  test.each([
    [0.91, '0.005'],
    [0.75, '0.056'],
    [0.64, '0.158'],
    [0.51, '0.462'],
    [0.36, '1.580'],
    [0.19, '2.5'],
  ] as const)('fan system effect of a crimp, open share %d (model assumption)', (open, printed) =>
    expectPrinted(crimpSystemEffect(open), printed),
  );
});
