/** Where the air leaves: the coefficient includes the velocity pressure thrown away at the exit. */
import type { Terminal } from '../types.ts';
import type { CoefficientName } from '../coefficients.ts';
import { coefficientTerm, type Context, type Part } from '../network.ts';

const FORMS: Record<Terminal['form'], CoefficientName> = {
  'open-end': 'openEnd',
  'wall-cowl': 'wallCowl',
  'rain-cap': 'rainCap',
  'high-rain-cap': 'highRainCap',
  louvre: 'louvre',
};

export function terminalPart(terminal: Terminal, context: Context): Part {
  const diameter = terminal.diameter_mm / 1000;
  const coefficient = terminal.lossCoefficient ?? context.coefficients[FORMS[terminal.form]];
  if (terminal.lossCoefficient === undefined && terminal.form !== 'open-end')
    context.assume('terminal-form', terminal.id);
  const term = coefficientTerm('exit', coefficient, diameter, context.air.density);
  return { id: terminal.id, kind: 'terminal', diameter, terms: [term], shape: {} };
}
