import { type DiagonalPattern, diamonds } from '@halfhitch/core';
import { FIRST_COLOURS } from '../draw/edit/blank.js';
import { keyed } from './edit/keyed.js';

/** A piece made by rule, to look around with. */
export function demoPattern(): DiagonalPattern {
  const [chalk, blue, orange] = keyed(FIRST_COLOURS);
  const colours = [orange, chalk, blue].filter((colour) => colour !== undefined);
  return diamonds({ strings: 12, rows: 48, colours });
}
