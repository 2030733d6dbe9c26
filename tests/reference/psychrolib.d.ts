/** What the tests use of PsychroLib: ASHRAE Handbook, Fundamentals (2017), chapter 1, in SI units once they are set. */
declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    SetUnitSystem(system: number): void;
    /** Pa over water, below 0.01 °C over ice. */
    GetSatVapPres(tempC: number): number;
    GetTDewPointFromRelHum(tempC: number, rh: number): number;
    /** Water over dry air, by mass. */
    GetHumRatioFromRelHum(tempC: number, rh: number, pressurePa: number): number;
    GetHumRatioFromVapPres(vaporPa: number, pressurePa: number): number;
    /** m³ a kg of dry air. */
    GetMoistAirVolume(tempC: number, humidityRatio: number, pressurePa: number): number;
  };
  export default psychrolib;
}
