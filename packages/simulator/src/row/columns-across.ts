import { columnsOf } from '@halfhitch/geometry/row';
import { type RowToPlay, wholeScene } from './row-scene.js';

const places = new WeakMap<RowToPlay, readonly number[]>();

/**
 * Where the base strings of the whole row hang, in mm. Windows are placed by them, so that nothing leaps
 * when the window changes.
 */
export function columnsAcross(play: RowToPlay): readonly number[] {
  let found = places.get(play);
  if (found === undefined) {
    found = columnsOf(wholeScene(play));
    places.set(play, found);
  }
  return found;
}
