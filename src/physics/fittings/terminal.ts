/** Where the air leaves: the coefficient includes the velocity pressure thrown away at the exit. */
import type { Cause, Terminal } from '../types.ts';
import type { CoefficientName } from '../central.ts';
import { coefficientTerm, type Context, type Part, type Term } from '../network.ts';

const FORMS: Record<Terminal['form'], CoefficientName> = {
  'open-end': 'openEnd',
  'wall-cowl': 'wallCowl',
  'rain-cap': 'rainCap',
  'high-rain-cap': 'highRainCap',
  louvre: 'louvre',
};

/** Wire mesh on the velocity pressure before it: Idelchik diagram 8-6, from memory. `open` above 0 to 1. */
export function screenLoss(open: number): number {
  return 1.3 * (1 - open) + (1 / open - 1) ** 2;
}

export function terminalPart(terminal: Terminal, context: Context): Part {
  const diameter = terminal.diameter_mm / 1000;
  const coefficient = terminal.lossCoefficient ?? context.coefficients[FORMS[terminal.form]];
  if (terminal.lossCoefficient === undefined && terminal.form !== 'open-end')
    context.assume('terminal-form', terminal.id);
  const mesh = (open: number) => context.coefficients.screen * screenLoss(open);
  const terms: Term[] = [];
  const add = (cause: Cause, loss: number) =>
    terms.push(coefficientTerm(cause, loss, diameter, context.air.density));
  const { blocked = 0, screened = 0 } = terminal.condition ?? {};
  add('exit', coefficient);
  if (terminal.screen) add('screen', mesh(terminal.screen.freeArea));
  if (screened > 0) add('screen', mesh(1 - screened));
  if (terminal.screen || screened > 0) context.assume('screen', terminal.id);
  if (blocked > 0) {
    // The same air through what is left, so much faster.
    const whole = coefficient + (terminal.screen ? mesh(terminal.screen.freeArea) : 0);
    add('blocked', whole * ((1 - blocked) ** -2 - 1));
    context.assume('blocked-opening', terminal.id);
  }
  const shape = {
    ...(blocked > 0 ? { blockedShare: blocked } : {}),
    ...(screened > 0 ? { screenFreeArea: 1 - screened } : {}),
  };
  return { id: terminal.id, kind: 'terminal', diameter, terms, shape };
}
