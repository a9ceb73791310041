import { expect, test } from 'vitest';
import { newId } from '../../src/project/new-id.js';

test('ids have the form of RFC 9562, version 4, and are not given twice', () => {
  const ids = Array.from({ length: 1000 }, newId);
  for (const id of ids) {
    expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  }
  expect(new Set(ids).size).toBe(ids.length);
});
