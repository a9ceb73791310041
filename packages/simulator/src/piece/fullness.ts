/**
 * How much thicker than the tube round its centre-line a thread of a piece is drawn. Yarn is no
 * wire: between the places where knots press on it, it spreads and fills the gaps, so that a fabric
 * of tubes of the thread's diameter looks more open than a real one. Appearance only: lengths,
 * sizes and clearances know nothing of it. Chosen by eye, no source.
 */
export const FULLNESS = 1.35;
