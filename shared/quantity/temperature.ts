/** Degrees Fahrenheit of degrees Celsius, exact: F = C x 9/5 + 32 (NIST SP 811 app. B). */
export function celsiusToFahrenheit(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}

/** Degrees Celsius of degrees Fahrenheit, exact (NIST SP 811 app. B). */
export function fahrenheitToCelsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** Gas marks and the oven setting they stand for. Common practice, no published standard. */
const GAS_MARK_C: readonly (readonly [mark: number, celsius: number])[] = [
  [0.25, 110],
  [0.5, 120],
  [1, 140],
  [2, 150],
  [3, 160],
  [4, 180],
  [5, 190],
  [6, 200],
  [7, 220],
  [8, 230],
  [9, 240],
];

/** The oven setting of a gas mark, degrees Celsius; null for a mark that no oven has. */
export function gasMarkToCelsius(mark: number): number | null {
  return GAS_MARK_C.find(([known]) => known === mark)?.[1] ?? null;
}

/**
 * An oven setting as the trade calls it in both scales: Fahrenheit to the nearest 10, so 200 °C
 * (exactly 392 °F) is called 390 °F. Never for food-safety temperatures: use `writeCore`.
 */
export function writeOven(celsius: number): string {
  const fahrenheit = Math.round(celsiusToFahrenheit(celsius) / 10) * 10;
  return `${Math.round(celsius)} °C / ${fahrenheit} °F`;
}

/** A food-safety temperature in both scales, to the whole degree: 74 °C / 165 °F. */
export function writeCore(celsius: number): string {
  return `${Math.round(celsius)} °C / ${Math.round(celsiusToFahrenheit(celsius))} °F`;
}
