/**
 * How wide a label will be, without asking the page: the same answer on the server, in tests and in
 * the browser, and no layout pass in the middle of a reveal.
 */

/** Advance widths in em of Barlow Condensed 500, measured in Chromium and rounded up per class. */
const narrow = /[iIjl.,:;'|!]/;
const medium = /[rtf()\-/³² ]/;
const wide = /[mwMW%]/;

/** Width in px of `text` set in the lettering face at `size` px. */
export function textWidth(text: string, size: number): number {
  let em = 0;
  for (const letter of text) {
    if (letter.codePointAt(0)! > 0x2fff) em += 1;
    else if (narrow.test(letter)) em += 0.225;
    else if (medium.test(letter)) em += 0.3;
    else if (wide.test(letter)) em += 0.66;
    else em += 0.455;
  }
  return em * size;
}
