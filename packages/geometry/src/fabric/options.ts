import { GeometryError } from '../knot/options.js';

/** A factor of a swatch. @throws GeometryError outside its limits */
export function factor(name: string, value = 1): number {
  if (value >= 0.5 && value <= 2) return value;
  throw new GeometryError(
    `${name} is ${value}; it must be from 0.5 to 2. Measure the swatch again, or change the diameter.`,
  );
}

/** Rows built at a time. @throws GeometryError outside their limits */
export function chunkRows(value: number): number {
  if (Number.isInteger(value) && value >= 1 && value <= 100) return value;
  throw new GeometryError(`rowsPerChunk is ${value}; give a whole number from 1 to 100.`);
}
