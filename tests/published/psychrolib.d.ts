declare module 'psychrolib' {
  /** The few calls that the checks use; SI: °C, Pa, humidity as a share. */
  type Psychrometrics = {
    readonly IP: number;
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(temperature: number): number;
    GetTDewPointFromRelHum(temperature: number, humidity: number): number;
    GetVapPresFromRelHum(temperature: number, humidity: number): number;
  };
  const psychrolib: Psychrometrics;
  export default psychrolib;
}
