/**
 * The frame of every curve in this package.
 *
 * The held string runs down the page along x = 0, z = 0. x points right, y points DOWN the page
 * (away from the finished work), z points to the viewer: the side looked at is the front. A
 * renderer whose y points up negates y. As (right, down, to the viewer) is a left-handed frame,
 * everything with a handedness here (turning number, linking number, writhe) is stated as the
 * viewer sees it, in the usual right-handed frame (right, up, to the viewer).
 *
 * At the API lengths are in mm. Inside, generators work with the tying string's diameter as unit.
 */
export const AXES = ['right', 'down', 'to the viewer'] as const;
