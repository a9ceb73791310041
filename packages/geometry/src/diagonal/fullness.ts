/**
 * How much thicker than its diameter a thread of diagonal work is to be drawn, for the reason that
 * `FABRIC_FULLNESS` gives: more, since knots of all kinds keep the distance that the widest of them
 * need. Appearance only; chosen by eye between 1.4 and 1.6, no source.
 */
export const LATTICE_FULLNESS = 1.5;
