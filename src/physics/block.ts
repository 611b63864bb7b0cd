/**
 * Young's modulus of rubber, Pa, by its hardness in Shore A: Gent, On the relation between indentation hardness and
 * Young's modulus, Rubber Chemistry and Technology 31 (1958) 896.
 */
export const modulusOfHardness = (shoreA: number): number =>
  ((0.0981 * (56 + 7.62336 * shoreA)) / (0.137505 * (254 - 2.54 * shoreA))) * 1e6;

/** Loaded face over free surface of a round block: R / 2 T, lengths alike. */
export const shapeFactor = (radius: number, thickness: number): number => radius / (2 * thickness);

/**
 * Apparent modulus in compression of a block that cannot slide on its plates: E (1 + 2 S^2), and the bulk in series
 * (Gent and Lindley, Proceedings of the Institution of Mechanical Engineers 173, 1959). One that slides freely has E.
 */
export const heldModulus = (modulusPa: number, shape: number, bulkPa: number): number =>
  1 / (1 / (modulusPa * (1 + 2 * shape ** 2)) + 1 / bulkPa);
