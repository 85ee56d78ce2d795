/** The parts of PsychroLib the checks call; the package brings no types. SI: degC, Pa, kg/kg, kg/m3. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(temperature_C: number): number;
    GetHumRatioFromRelHum(temperature_C: number, relativeHumidity: number, pressure_Pa: number): number;
    GetMoistAirDensity(temperature_C: number, humidityRatio: number, pressure_Pa: number): number;
  };
  export default psychrolib;
}
