/** The paper a drawing gets from the width there is for it. */
import type { Frame } from './types.ts';

/** Below this the drawing is laid out as for a phone. */
const PHONE = 640;
/** Width of a page not laid out yet, as on the server. */
const UNMEASURED = 1360;

/** Height over width of a wide drawing, and the flattest that still has room for roof and labels. */
const WIDE = 0.29;
const FLATTEST = 0.255;

/** `width` in px; `most` is the height in px there is for a wide drawing; `lettering` the least size of its letters. */
export function frameFor(width: number, most = Infinity, lettering?: number): Frame {
  const across = width || UNMEASURED;
  const phone = across < PHONE;
  return {
    width: across,
    height: Math.round(phone ? across * 0.64 : Math.max(across * FLATTEST, Math.min(across * WIDE, most))),
    kind: phone ? 'phone' : 'wide',
    ...(lettering === undefined ? {} : { lettering }),
  };
}
