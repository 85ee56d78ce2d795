/**
 * What running the fan takes: its electricity, and the heat of the air it sends away. Tariff, degree days
 * and COP are the user's own. Latent heat and the cooling season are left out.
 */

/** J/(m3 K): 1.2 kg/m3 times 1006 J/(kg K). */
const HEAT_OF_AIR = 1.2 * 1006;

/** kWh a year of a fan drawing `power_W` for so many hours a day. */
export function fanEnergy_kWh(power_W: number, hoursPerDay: number): number {
  return power_W * hoursPerDay * 0.365;
}

/** Watt-hours to move `air_m3` away at a flow: at half the flow it takes twice as long; null with no flow. */
export function wattHoursToMove(air_m3: number, power_W: number, flow_L_s: number): number | null {
  return flow_L_s > 0 ? (power_W * air_m3 * 1000) / flow_L_s / 3600 : null;
}

/** Heat in W that goes out with the air, at a temperature difference in K. */
export function heatRate_W(flow_L_s: number, difference_K: number): number {
  return (HEAT_OF_AIR * flow_L_s * difference_K) / 1000;
}

/** kWh of heat a year; `heatingDegreeDays` in K day. */
export function heatEnergy_kWh(flow_L_s: number, heatingDegreeDays: number, hoursPerDay: number): number {
  return (heatRate_W(flow_L_s, heatingDegreeDays) * 24 * (hoursPerDay / 24)) / 1000;
}

/** Money for heat, in the unit of money of `tariffPerkWh`: `cop` is heat made per energy bought (0.8 for a flued heater, 1 resistive, 3.5 a heat pump). */
export function heatCost(heat_kWh: number, cop: number, tariffPerkWh: number): number | null {
  return cop > 0 ? (heat_kWh / cop) * tariffPerkWh : null;
}
