/** The paper a drawing gets from the width there is for it. */
import type { Frame } from './types.ts';

/** Below this the drawing is laid out as for a phone. */
const PHONE = 640;
/** Width of a page not laid out yet, as on the server. */
const UNMEASURED = 1360;

/** `width` in px. */
export function frameFor(width: number): Frame {
  const across = width || UNMEASURED;
  const phone = across < PHONE;
  return {
    width: across,
    height: Math.round(across * (phone ? 0.64 : 0.29)),
    kind: phone ? 'phone' : 'wide',
  };
}
