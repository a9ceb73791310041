/**
 * How much thicker than its diameter a thread of a fabric is to be drawn. Yarn is no wire: where
 * nothing presses on it, it spreads and fills gaps, so that a fabric of tubes of the thread's own
 * diameter looks more open than a real one. Appearance only: no length, size or clearance is
 * computed from it, and tubes drawn so overlap. Chosen by eye between 1.3, where base strings still
 * show through, and 1.45, where knots run into each other; no source.
 */
export const FABRIC_FULLNESS = 1.35;
