type Poly = readonly number[];

const at = (poly: Poly, x: number): number => poly.reduceRight((sum, c) => sum * x + c, 0);

// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 9.4.1 to 9.4.6: errors below 1e-7.
const J0_SMALL: Poly = [1, -2.2499997, 1.2656208, -0.3163866, 0.0444479, -0.0039444, 0.00021];
const J1_SMALL: Poly = [
  0.5, -0.56249985, 0.21093573, -0.03954289, 0.00443319, -0.00031761, 1.109e-5,
];
const J0_SIZE: Poly = [
  0.79788456, -7.7e-7, -0.0055274, -9.512e-5, 0.00137237, -0.00072805, 0.00014476,
];
const J0_ANGLE: Poly = [
  -0.78539816, -0.04166397, -3.954e-5, 0.00262573, -0.00054125, -0.00029333, 0.00013558,
];
const J1_SIZE: Poly = [
  0.79788456, 1.56e-6, 0.01659667, 0.00017105, -0.00249511, 0.00113653, -0.00020033,
];
const J1_ANGLE: Poly = [
  -2.35619449, 0.12499612, 5.65e-5, -0.00637879, 0.00074348, 0.00079824, -0.00029166,
];

/** Bessel function of the first kind, order 0, for x of 0 and above. */
export function besselJ0(x: number): number {
  if (x <= 3) return at(J0_SMALL, (x / 3) ** 2);
  return (at(J0_SIZE, 3 / x) * Math.cos(x + at(J0_ANGLE, 3 / x))) / Math.sqrt(x);
}

/** Bessel function of the first kind, order 1, for x of 0 and above. */
export function besselJ1(x: number): number {
  if (x <= 3) return x * at(J1_SMALL, (x / 3) ** 2);
  return (at(J1_SIZE, 3 / x) * Math.cos(x + at(J1_ANGLE, 3 / x))) / Math.sqrt(x);
}
