import type { OwnThread } from './match-threads.js';

/** Threads to begin with, where the maker has named none: plain colours that most have. */
export const USUAL_THREADS: readonly OwnThread[] = [
  { hex: '#1f6fb2', name: 'lake blue' },
  { hex: '#d9642a', name: 'buoy orange' },
  { hex: '#2f7d4f', name: 'reed green' },
  { hex: '#f4f1e8', name: 'chalk' },
  { hex: '#4b5563', name: 'slate' },
  { hex: '#14181d', name: 'black' },
  { hex: '#b3262e', name: 'pennant red' },
  { hex: '#f0c23c', name: 'lamp yellow' },
  { hex: '#7b4a2d', name: 'oar brown' },
];
