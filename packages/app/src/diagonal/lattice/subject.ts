import type { Lattice } from '@halfhitch/core';
import type { Place } from '../../draw/edit/place.js';
import type { Symmetry } from '../../draw/edit/symmetry.js';
import type { Ink } from '../edit/ink.js';
import type { LatticeLook } from './look.js';

/** `choose` draws nothing: a knot that is tapped is told. */
export type LatticeTool = 'pencil' | 'line' | 'fill' | 'pick' | 'view' | 'choose';

export interface LatticeSettings {
  readonly tool: LatticeTool;
  readonly ink: Ink;
  readonly symmetry: Symmetry;
  readonly signs: boolean;
}

/** What a lattice sheet shows, and what is drawn on it. */
export interface LatticeSubject {
  readonly lattice: Lattice;
  /** What strokes are drawn into; `rows x knotsAcross`. */
  readonly bytes: Uint8Array;
  /** All that is seen, with a stroke in hand. */
  readonly look: (bytes: Uint8Array) => LatticeLook;
  /** "Row 3, strings 4 and 5: buoy orange" */
  readonly words: (place: Place, bytes: Uint8Array) => string;
}

/** A stroke that is finished. */
export interface LatticeEdit {
  readonly bytes: Uint8Array;
  /** For the button that takes it back. */
  readonly what: string;
}
