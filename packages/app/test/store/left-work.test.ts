import fc from 'fast-check';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { forgetLeft, leaveWork, leftPlace, leftWork } from '../../src/store/left-work.js';
import { anyProject } from './samples.js';

beforeEach(() => {
  const places: Record<string, string> = {};
  const storage = Object.create(null, {
    setItem: { value: (place: string, text: string) => Object.assign(storage, { [place]: text }) },
    getItem: { value: (place: string) => storage[place] ?? null },
    removeItem: { value: (place: string) => delete storage[place] },
  });
  vi.stubGlobal('localStorage', Object.assign(storage, places));
});
afterEach(() => vi.unstubAllGlobals());

it('what is left is found as it was, by its window and project', () => {
  fc.assert(
    fc.property(anyProject, fc.nat(), fc.option(fc.nat()), (project, base, sent) => {
      leaveWork('w', { project, base, sent });
      expect(leftWork()).toEqual([[leftPlace('w', project.id), { project, base, sent }]]);
      forgetLeft(leftPlace('w', project.id));
      expect(leftWork()).toEqual([]);
    }),
  );
});
