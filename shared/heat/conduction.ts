import { besselJ0, besselJ1 } from "./bessel.ts";

/** Bodies whose heating and cooling has a series solution. */
export type Shape = "slab" | "cylinder" | "sphere";

interface Term {
  readonly eigenvalue: number;
  readonly coefficient: number;
}

/** Terms of the series: with twenty the sum is exact to five digits from Fo = 0.005 on. */
const TERMS = 20;
const HALVINGS = 60;

/**
 * How far the centre of a body still is from the temperature around it, as a share of where it began
 * (1 at first, 0 in the end): the series of transient conduction with a constant surface coefficient.
 * `biot` is h L / k and `fourier` is a t / L2, L being the half thickness of a slab or the radius. For Fo
 * above 0.2 the first term alone is the textbook's one-term approximation (Cengel, Heat Transfer, section 4-2).
 */
export function centreRatio(shape: Shape, biot: number, fourier: number): number {
  const series = seriesOf(shape, biot);
  const sum = series.reduce(
    (total, { eigenvalue, coefficient }) =>
      total + coefficient * Math.exp(-(eigenvalue ** 2) * fourier),
    0,
  );
  return Math.min(1, Math.max(0, sum));
}

const KNOWN = new Map<string, readonly Term[]>();
const KNOWN_MAX = 200;

function seriesOf(shape: Shape, biot: number): readonly Term[] {
  const key = `${shape} ${biot}`;
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  const made = Array.from({ length: TERMS }, (_, n) => term(shape, biot, n + 1));
  if (KNOWN.size >= KNOWN_MAX) KNOWN.clear();
  KNOWN.set(key, made);
  return made;
}

function term(shape: Shape, biot: number, n: number): Term {
  const eigenvalue = root(shape, biot, n);
  return { eigenvalue, coefficient: coefficientOf(shape, eigenvalue) };
}

/** The equation whose n-th root is the eigenvalue, written without poles. */
function equation(shape: Shape, biot: number, x: number): number {
  switch (shape) {
    case "slab":
      return x * Math.sin(x) - biot * Math.cos(x);
    case "cylinder":
      return x * besselJ1(x) - biot * besselJ0(x);
    case "sphere":
      return (1 - biot) * Math.sin(x) - x * Math.cos(x);
  }
}

/** Between which values the n-th root lies: from no exchange at all to a fixed surface temperature. */
function bracket(shape: Shape, n: number): readonly [number, number] {
  switch (shape) {
    case "slab":
      return [(n - 1) * Math.PI, (n - 0.5) * Math.PI];
    case "cylinder":
      return [n === 1 ? 0 : zeroOfJ1(n - 1), zeroOfJ0(n)];
    case "sphere":
      return [(n - 1) * Math.PI, n * Math.PI];
  }
}

/** Zeros of the Bessel functions by McMahon's expansion (Abramowitz and Stegun 9.5.12). */
function zeroOfJ0(n: number): number {
  const b = (n - 0.25) * Math.PI;
  return b + 1 / (8 * b) - 124 / (3 * (8 * b) ** 3);
}

function zeroOfJ1(n: number): number {
  const b = (n + 0.25) * Math.PI;
  return b - 3 / (8 * b) + 36 / (3 * (8 * b) ** 3);
}

function root(shape: Shape, biot: number, n: number): number {
  // A hair inside, so that the two ends differ in sign.
  let [low, high] = bracket(shape, n).map((end, side) => end + (side === 0 ? 1e-6 : 1e-3)) as [
    number,
    number,
  ];
  if (shape === "sphere") high -= 2e-3;
  const atLow = equation(shape, biot, low);
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (Math.sign(equation(shape, biot, middle)) === Math.sign(atLow)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function coefficientOf(shape: Shape, x: number): number {
  switch (shape) {
    case "slab":
      return (4 * Math.sin(x)) / (2 * x + Math.sin(2 * x));
    case "cylinder":
      return ((2 / x) * besselJ1(x)) / (besselJ0(x) ** 2 + besselJ1(x) ** 2);
    case "sphere":
      return (4 * (Math.sin(x) - x * Math.cos(x))) / (2 * x - Math.sin(2 * x));
  }
}
